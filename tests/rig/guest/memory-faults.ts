/**
 * A sample of faults on the way of a write, done by the pad at the far end of a real node: the end that the session tells is
 * held against the bytes that really stand in the pad, and what it says is neither before nor after is restored.
 */
import { differingBytes, memoryEnd, type DifferingBytes } from '../../../core/image/differing-bytes.ts';
import type { WriteEnd, WriteJob } from '../../../core/image/write-job.ts';
import { writeMemory } from '../../../core/image/write-memory.ts';
import { faultImage, faultMap, faultProtocol, FIRST_BLOCK } from '../../support/fault-pad.ts';
import type { Fault, FaultKind } from '../../support/memory-world.ts';
import { check } from './checks.ts';
import type { MemoryBench, Played } from './memory-bench.ts';
import { planJob, readAll, restore, valueOf } from './memory-job.ts';

export interface FaultEnds {
  faults: number;
  before: number;
  after: number;
  /** Told as a list of bytes that differ, and brought back to before. */
  restored: number;
  /** Not told truly, or not brought back. */
  wrong: number;
}

/** A command within the reading before the write. */
const READING = 10;

export async function checkFaults(bench: MemoryBench): Promise<FaultEnds> {
  await bench.setMemory(faultImage(), null);
  const job = await planJob(valueOf((await readAll(bench, faultProtocol, faultMap)).value), 'user', faultProtocol);
  const ends: FaultEnds = { faults: 0, before: 0, after: 0, restored: 0, wrong: 0 };
  for (const [kind, steps] of sample(job)) for (const k of steps) await checkFault(bench, job, { kind, k }, ends);
  check('the sample of faults meets each of the three ends', ends.before > 0 && ends.after > 0 && ends.restored > 0, {
    ...ends,
  });
  return ends;
}

/** The steps k, in commands from 0, that each kind is tried at. */
function sample({ blocks }: WriteJob): readonly (readonly [FaultKind, readonly number[]])[] {
  const first = FIRST_BLOCK;
  const second = first + 2;
  const last = first + 2 * (blocks.length - 1);
  const comparing = last + 2 + READING;
  return [
    ['command lost', [first, last]],
    ['reply lost', [READING, first, last + 1]],
    ['reply lost always', [READING, second]],
    ['reply late', [READING, first]],
    ['short reply', [0, first, comparing]],
    ['stale reply', [READING, first, second + 1, comparing]],
    ['bit flip in the command', [READING, first, last]],
    ['bit flip in the reply', [READING, first, comparing]],
    ['bit flip in the reply always', [second + 1]],
    ['write refused', [first, last]],
    ['write refused always', [second]],
    ['write only said', [first, last]],
    ['write only said always', [second, last]],
    ['unplugged before', [READING, first, last]],
    ['unplugged after', [first, last, comparing]],
    ['power lost in a block', [second, last]],
    ['second program asks', [first]],
  ];
}

async function checkFault(bench: MemoryBench, job: WriteJob, fault: Fault, ends: FaultEnds): Promise<void> {
  await bench.setMemory(job.before, fault);
  const played = await bench.play(faultProtocol, (exchange) => writeMemory(exchange, job));
  const really = await bench.look();
  const { end, problem } = played.value;
  const named = end === 'differs' ? differingBytes(played.value, job.before, job.after, job.map) : [];
  let wrong = judge(played, job, named, really);
  if (end === 'differs') {
    await bench.setMemory(null, null);
    if (!(await restore(bench, job, faultProtocol))) wrong = [...wrong, 'the restore did not bring the old bytes back'];
  }
  ends.faults += 1;
  if (wrong.length > 0) ends.wrong += 1;
  else ends[end === 'differs' ? 'restored' : end] += 1;
  const { retries, late } = played.tally;
  check(
    `memory, ${fault.kind} at command ${fault.k}: ${end === 'differs' ? 'differing bytes named, and restored' : `ends ${end}`}`,
    wrong.length === 0,
    { problem: problem?.code ?? null, retries, late, named: named.length, wrong },
  );
}

/** What the session told that is not so. */
function judge(
  { value, tally, journal }: Played<WriteEnd>,
  job: WriteJob,
  named: readonly DifferingBytes[],
  really: Uint8Array,
): string[] {
  const { end, problem } = value;
  const last = journal.at(-1);
  const isOpen = last !== undefined && last.step !== 'end';
  const truth = memoryEnd({ now: really, unknown: [] }, job.before, job.after, job.map);
  const silent = [...really.keys()].filter(
    (at) =>
      really[at] !== job.before[at] &&
      !named.some(({ offset, before }) => at >= offset && at < offset + before.length / 2),
  );
  const wrongs: readonly (readonly [boolean, string])[] = [
    [problem === null && tally.retries === 0, 'the fault was not met at all'],
    [end !== 'after' && problem === null, 'no reason is told'],
    [end !== 'differs' && end !== truth, `the pad is really ${truth}`],
    [end === 'differs' && named.length === 0, 'no byte is named'],
    [end === 'differs' && silent.length > 0, `bytes that differ are not named: ${silent.join(' ')}`],
    [end === 'differs' && !isOpen, 'the journal is closed though the memory differs'],
    // Of a pad that left before the whole could be compared the journal is not closed.
    [end !== 'differs' && isOpen && problem?.code !== 'pad-gone', 'the journal stays open though the end is known'],
    [last?.step === 'end' && last.end !== end, 'the journal tells another end'],
  ];
  return wrongs.filter(([isSo]) => isSo).map(([, says]) => says);
}
