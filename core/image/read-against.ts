/** Reads the whole memory against what it should hold: a difference counts when it stays. */
import { done, type Result } from '../result.ts';
import { firstDifference } from './differing-bytes.ts';
import type { Steps } from './memory-effects.ts';
import type { Exchange } from './memory-exchange.ts';
import type { MemoryMap } from './memory-map.ts';
import { readRange, readWhole } from './read-memory.ts';

/** Where it differs the place is read again, for a reply without a checksum may have been damaged on its way. */
export function* readAgainst(exchange: Exchange, map: MemoryMap, wanted: Uint8Array): Steps<Result<Uint8Array>> {
  const whole = yield* readWhole(exchange, map.size);
  if (!whole.ok) return whole;
  for (let look = 0; look <= exchange.protocol.retries; look += 1) {
    const at = firstDifference(whole.value, wanted, map.volatile);
    if (at === null) break;
    const again = yield* readRange(exchange, {
      offset: at,
      length: Math.min(exchange.protocol.read.block, map.size - at),
    });
    if (!again.ok) return again;
    whole.value.set(again.value, at);
  }
  return done(whole.value);
}
