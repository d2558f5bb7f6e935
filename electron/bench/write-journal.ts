/** The journal of one write: begun with everything that a later start needs, closed when the end is known. */
import { randomBytes } from 'node:crypto';
import type { JournalStep } from '../../core/image/memory-effects.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, type Result } from '../../core/result.ts';
import type { JournalHead } from '../store/journal.ts';
import { sha256Of } from '../store/vault.ts';
import type { MemoryPorts } from './memory-ports.ts';
import type { WriteOrder } from './write-order.ts';

type JournalPorts = Pick<MemoryPorts, 'version' | 'clock' | 'store' | 'journals' | 'noted'>;

/** A session that writes nothing has no order and asks for no journal. */
export function writeJournal(
  { version, clock, store, journals, noted }: JournalPorts,
  pad: PadIdentity,
  protocol: string,
  order: WriteOrder | null,
): (entry: JournalStep) => Promise<Result<unknown>> {
  const at = clock.now().toISOString();
  const id = `${at.replaceAll(/[:.]/gu, '-')}-${randomBytes(3).toString('hex')}`;
  return async (entry) => {
    if (order === null) return done(undefined);
    if (entry.step === 'begin') {
      const begun = await store.begin(id, headOf(order, { program: version, at, pad, protocol }));
      // From here on this journal stands for what an older one of the pad left.
      if (begun.ok) await journals.closeOlder(pad, id);
      noted();
      return begun;
    }
    const noting = await store.append(id, entry);
    // A broken write that could not be taken up is still broken.
    const isKnown = entry.step === 'end' && (order.broken === null || entry.end === 'after');
    if (noting.ok && isKnown) await store.close(id);
    if (entry.step === 'end') noted();
    return noting;
  };
}

function headOf(
  { doing, job, patch, broken }: WriteOrder,
  from: Pick<JournalHead, 'program' | 'at' | 'pad' | 'protocol'>,
): JournalHead {
  return {
    kind: 'stickwright-memory-journal',
    version: 1,
    ...from,
    unit: job.unit,
    map: job.map,
    before: sha256Of(job.before),
    after: sha256Of(job.after),
    changes: patch.changes,
    origin:
      broken === null
        ? null
        : {
            before: sha256Of(broken.before),
            after: sha256Of(broken.after),
            changes: broken.changes,
            target: doing === 'restore' ? 'before' : 'after',
          },
  };
}
