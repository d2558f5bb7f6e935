/** After a failed write: the old bytes back, or at least a true account of what stands in the memory. */
import type { Problem } from '../result.ts';
import { memoryEnd } from './differing-bytes.ts';
import type { Steps } from './memory-effects.ts';
import { pause, type Exchange } from './memory-exchange.ts';
import { readAgainst } from './read-against.ts';
import { readsOf } from './read-memory.ts';
import { putBytes, type WriteEnd, type WriteJob, type WriteState } from './write-job.ts';

/** What no further command can reach. */
const GONE = 'pad-gone';

/**
 * The blocks that a write was sent for, the last one first, so that a layer is invalid while its numbers change; then the
 * whole memory is read and named for what it is. A block that cannot be put back does not keep the others from it.
 */
export function* rollBack(exchange: Exchange, job: WriteJob, state: WriteState, problem: Problem): Steps<WriteEnd> {
  exchange.tally.step = 'rollBack';
  exchange.isCalm = true;
  const isSeen = problem.code !== GONE && (yield* putBackAndLook(exchange, job, state));
  const end = memoryEnd(state, job.before, job.after, job.map);
  exchange.tally.writing = false;
  // Without a look at the whole the journal stays open. Whether the disk takes its end or not, the next look finds the same.
  if (isSeen && end !== 'differs') yield { do: 'journal', entry: { step: 'end', end } };
  return { end, problem, now: state.now, unknown: state.unknown };
}

/** True where the whole memory could be read afterwards. */
function* putBackAndLook(exchange: Exchange, job: WriteJob, state: WriteState): Steps<boolean> {
  const { tally, protocol } = exchange;
  tally.of += (job.rollsBack ? 2 * state.sent.length : 0) + readsOf(exchange, job.map.size);
  yield* pause(exchange, protocol.settleMillis, null);
  if (job.rollsBack && (yield* putBack(exchange, state))) return false;
  const whole = yield* readAgainst(exchange, job.map, job.rollsBack ? job.before : job.after);
  if (!whole.ok) return false;
  state.now.set(whole.value);
  state.unknown = [];
  return true;
}

/** True where the pad has left. */
function* putBack(exchange: Exchange, state: WriteState): Steps<boolean> {
  for (const { offset, old } of state.sent.toReversed()) {
    // A disk that is full must not keep the pad's old bytes from it.
    yield { do: 'journal', entry: { step: 'rollBack', offset, bytes: old.length } };
    const problem = yield* putBytes(exchange, state, offset, old);
    if (problem?.code === GONE) return true;
  }
  return false;
}
