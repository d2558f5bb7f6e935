/** Writes a plan to a pad: block by block, each read back; ends in before, after, or with the bytes that differ. */
import { failed, type Problem } from '../result.ts';
import { firstDifference, memoryEnd } from './differing-bytes.ts';
import { checkBattery, identifyPad } from './identify-pad.ts';
import type { Steps } from './memory-effects.ts';
import type { Exchange } from './memory-exchange.ts';
import { readAgainst } from './read-against.ts';
import { readsOf } from './read-memory.ts';
import { rollBack } from './roll-back.ts';
import { putBytes, type WriteEnd, type WriteJob, type WriteState } from './write-job.ts';

/**
 * identify → battery → read whole, equal to the plan's image → keep → journal → write and read back each block → compare the
 * whole outside of what changes by itself → journal the end; or roll back. Until the first write is sent, no failure of the
 * session's own leaves anything but `before`.
 */
export function* writeMemory(exchange: Exchange, job: WriteJob): Steps<WriteEnd> {
  const { tally } = exchange;
  const reads = readsOf(exchange, job.map.size);
  tally.of = 2 + 2 * reads + 2 * job.blocks.length;
  const state: WriteState = { now: Uint8Array.from(job.before), unknown: [], sent: [] };
  const unready = yield* makeReady(exchange, job, state);
  // Nothing was sent: where the memory differs from the plan's image all the same, somebody else changed it.
  if (unready !== null) return { ...state, end: memoryEnd(state, job.before, job.after, job.map), problem: unready };
  tally.writing = true;
  const problem = (yield* writeAll(exchange, job, state)) ?? (yield* compareWhole(exchange, job, state));
  if (problem !== null) return yield* rollBack(exchange, job, state, problem);
  tally.writing = false;
  const closed = yield { do: 'journal', entry: { step: 'end', end: 'after' } };
  return { end: 'after', problem: closed.is === 'unkept' ? closed.problem : null, now: state.now, unknown: [] };
}

function* makeReady(exchange: Exchange, job: WriteJob, state: WriteState): Steps<Problem | null> {
  const { tally } = exchange;
  const kind = yield* identifyPad(exchange);
  if (!kind.ok) return kind.problem;
  if (kind.value.map !== job.map.id || (job.unit !== null && kind.value.unit !== job.unit))
    return failed(
      'memory-other-pad',
      'This is another pad than the one that the plan was made for; read this pad first.',
    ).problem;
  const low = yield* checkBattery(exchange);
  if (low !== null) return low;
  const current = yield* readAgainst(exchange, job.map, job.before);
  if (!current.ok) return current.problem;
  state.now.set(current.value);
  const changed = firstDifference(current.value, job.before, job.map.volatile);
  if (changed !== null)
    return failed(
      'memory-changed',
      `The pad's memory is no longer what the plan was made for: byte ${changed} differs; read it again and plan again.`,
    ).problem;
  tally.step = 'keep';
  const kept = yield { do: 'keep', image: current.value, why: 'before a write to the pad', map: job.map.id };
  if (kept.is === 'unkept') return kept.problem;
  tally.step = 'journal';
  const begun = yield { do: 'journal', entry: { step: 'begin' } };
  return begun.is === 'unkept' ? begun.problem : null;
}

function* writeAll(exchange: Exchange, { blocks }: WriteJob, state: WriteState): Steps<Problem | null> {
  exchange.tally.step = 'write';
  for (const block of blocks) {
    const { offset, new: bytes } = block;
    const entry = { step: 'write', offset, bytes: bytes.length } as const;
    const noted = yield { do: 'journal', entry };
    if (noted.is === 'unkept') return noted.problem;
    state.sent.push(block);
    const problem = yield* putBytes(exchange, state, offset, bytes);
    if (problem !== null) return problem;
  }
  return null;
}

function* compareWhole(exchange: Exchange, { after, map }: WriteJob, state: WriteState): Steps<Problem | null> {
  exchange.tally.step = 'compare';
  const whole = yield* readAgainst(exchange, map, after);
  if (!whole.ok) return whole.problem;
  state.now.set(whole.value);
  const at = firstDifference(whole.value, after, map.volatile);
  if (at === null) return null;
  return failed(
    'memory-differs',
    `After the write byte ${at} is not what it should be: another program may be writing to the pad; close it.`,
  ).problem;
}
