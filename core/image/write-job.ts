/** What a write session is given, what it knows on its way, what it ends with; and the one step that changes a pad. */
import { failed, type Problem } from '../result.ts';
import { firstDifference, type KnownMemory } from './differing-bytes.ts';
import type { Steps } from './memory-effects.ts';
import { ask, type Exchange } from './memory-exchange.ts';
import type { ByteRange, MemoryMap } from './memory-map.ts';
import { readRange } from './read-memory.ts';
import type { WriteBlock } from './write-blocks.ts';

export interface WriteJob {
  readonly map: MemoryMap;
  /** Of the pad that the image was read from; null where its protocol tells none. */
  readonly unit: string | null;
  /** The image that the plan is bound to, as it must stand in the pad. */
  readonly before: Uint8Array;
  readonly after: Uint8Array;
  /** In the order of writing. */
  readonly blocks: readonly WriteBlock[];
  /** After a failure: back to `before`; else the memory is only looked at again. */
  readonly rollsBack: boolean;
}

export interface WriteEnd extends KnownMemory {
  readonly end: 'before' | 'after' | 'differs';
  readonly problem: Problem | null;
}

/** The memory as the session knows it, and the blocks that a write was sent for. */
export interface WriteState {
  readonly now: Uint8Array;
  unknown: ByteRange[];
  readonly sent: WriteBlock[];
}

/** Writes and reads back, again where other bytes come back; what is not read back stands as unknown. */
export function* putBytes(
  exchange: Exchange,
  state: WriteState,
  offset: number,
  bytes: Uint8Array,
): Steps<Problem | null> {
  const { write, retries } = exchange.protocol;
  const range = { offset, length: bytes.length };
  for (let attempt = 0; ; attempt += 1) {
    state.unknown = [...state.unknown.filter((one) => one.offset !== offset), range];
    const written = yield* ask(exchange, write.code, range, bytes);
    if (!written.ok) return written.problem;
    const back = yield* readRange(exchange, range);
    if (!back.ok) return back.problem;
    state.now.set(back.value, offset);
    state.unknown = state.unknown.filter((one) => one.offset !== offset);
    if (firstDifference(back.value, bytes, []) === null) return null;
    if (attempt >= retries)
      return failed(
        'memory-not-written',
        `The ${bytes.length} bytes at ${offset} read back as others than were written, time and again.`,
      ).problem;
    exchange.tally.retries += 1;
  }
}
