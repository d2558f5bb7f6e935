/** One program at a time captures from a pad or writes to it, whichever shell it is. */
import { createHash } from 'node:crypto';
import path from 'node:path';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import type { PadLock } from '../bench/pads/pad-lock-port.ts';
import { takeLock, type LockPorts } from './lock-folder.ts';
import { thisOwner, type Owner } from './lock-owner.ts';
import { makeFolder } from './own-folder.ts';
import { findPlaces } from './places.ts';
import { storageProblem } from './storage-problem.ts';

/** `pad-busy` names the process that has the pad, where it is known. `ports` stands in for the machine in a test. */
export function createPadLock(
  folder: string = findPlaces().locks,
  ports: Omit<Partial<LockPorts>, 'lost'> = {},
): PadLock {
  return {
    async take(pad, lockKey, lost) {
      const place = path.join(folder, `${createHash('sha256').update(lockKey).digest('hex').slice(0, 24)}.lock`);
      const self = ports.self ?? thisOwner();
      try {
        await makeFolder(folder);
        const taken = await takeLock(place, { ...ports, self, lost: () => lost(lostProblem(pad)) });
        return taken.held ? done(taken.free) : busy(pad, taken.owner, self);
      } catch (thrown) {
        return { ok: false, problem: storageProblem(thrown, 'write', place) };
      }
    },
  };
}

function lostProblem(pad: PadIdentity): Problem {
  return {
    code: 'pad-lost-lock',
    says: `${pad.product} was taken over by another program, so this one stopped; close the other program and begin again.`,
  };
}

function busy(pad: PadIdentity, owner: Owner | null, self: Owner): Result<never> {
  if (owner?.pid === self.pid && owner.start === self.start && owner.space === self.space && owner.host === self.host)
    return failed(
      'pad-busy',
      `${pad.product} is in use in this program already; end its capture or memory session first.`,
    );
  return failed(
    'pad-busy',
    `${pad.product} is in use by ${whoIs(owner, self)}; end its capture or close it, then try again.`,
  );
}

function whoIs(owner: Owner | null, self: Owner): string {
  if (owner === null) return 'another program on this machine';
  const where = owner.host === self.host ? '' : ` on ${owner.host}`;
  return `process ${owner.pid}${where}, since ${owner.since}`;
}
