/** The journal of one write: begun with everything that a later start needs, closed when the end is known. */
import { randomBytes } from 'node:crypto';
import type { JournalStep } from '../../../core/image/memory-effects.ts';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { done, type Result } from '../../../core/result.ts';
import type { JournalHead } from '../../store/journal.ts';
import { sha256Of } from '../../store/sha256.ts';
import type { MemoryNeeds } from './memory-needs.ts';
import type { WriteOrder } from './write-order.ts';

type JournalPorts = Pick<MemoryNeeds, 'version' | 'clock' | 'store' | 'journals' | 'noted'>;

interface SessionJournal {
  readonly note: (entry: JournalStep) => Promise<Result<unknown>>;
  /** The session is over, whatever came of it. */
  readonly over: () => void;
}

/** A session that writes nothing has no order and asks for no journal. */
export function writeJournal(
  { version, clock, store, journals, noted }: JournalPorts,
  pad: PadIdentity,
  protocol: string,
  order: WriteOrder | null,
): SessionJournal {
  const at = clock.now().toISOString();
  const id = `${at.replaceAll(/[:.]/gu, '-')}-${randomBytes(3).toString('hex')}`;
  if (order === null) return { note: () => Promise.resolve(done(undefined)), over: () => undefined };
  const head = headOf(order, { program: version, at, pad, protocol });
  const note: SessionJournal['note'] = async (entry) => {
    if (entry.step === 'begin') {
      journals.begin(id, head);
      const begun = await store.begin(id, head);
      noted();
      return begun;
    }
    const noting = await store.append(id, entry);
    if (entry.step !== 'end') return noting;
    // Known whether the disk took the line or not: a journal that is moved away needs no room.
    const end = endOf(order, entry.end);
    if (end !== null) await journals.settle(head, end);
    noted();
    return noting;
  };
  return {
    note,
    over: () => {
      journals.end(id);
      noted();
    },
  };
}

/** Which side of the write the memory has come to; null where a broken write could not be taken up: it is still broken. */
function endOf({ doing, broken }: WriteOrder, end: 'before' | 'after'): 'before' | 'after' | null {
  if (broken === null) return end;
  if (end === 'before') return null;
  return doing === 'restore' ? 'before' : 'after';
}

function headOf(
  { doing, job, patch, broken }: WriteOrder,
  { pad, ...from }: Pick<JournalHead, 'program' | 'at' | 'protocol'> & { readonly pad: PadIdentity },
): JournalHead {
  return {
    kind: 'stickwright-memory-journal',
    version: 1,
    ...from,
    pad: { ...pad, unit: job.unit },
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
