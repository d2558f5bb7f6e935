/** Reads a pad's memory: the whole of it twice, and both readings must agree. */
import { done, type Result } from '../result.ts';
import { checkCopies, checkImage } from './check-image.ts';
import { identifyPad } from './identify-pad.ts';
import type { Steps } from './memory-effects.ts';
import { ask, type Exchange } from './memory-exchange.ts';
import type { ByteRange, MemoryMap } from './memory-map.ts';

export interface ReadEnd {
  readonly image: Uint8Array;
  readonly map: MemoryMap;
  readonly unit: string | null;
}

/** `maps` finds the map that the pad's kind names. The image is kept before the session ends. */
export function* readMemory(exchange: Exchange, maps: (id: string) => Result<MemoryMap>): Steps<Result<ReadEnd>> {
  const { tally } = exchange;
  tally.of = 1;
  const kind = yield* identifyPad(exchange);
  if (!kind.ok) return kind;
  const found = maps(kind.value.map);
  if (!found.ok) return found;
  const map = found.value;
  tally.of += 2 * readsOf(exchange, map.size);
  const first = yield* readWhole(exchange, map.size);
  if (!first.ok) return first;
  const second = yield* readWhole(exchange, map.size);
  if (!second.ok) return second;
  const wrong = checkCopies(first.value, second.value, map) ?? checkImage(second.value, map);
  if (wrong !== null) return { ok: false, problem: wrong };
  tally.step = 'keep';
  const kept = yield { do: 'keep', image: second.value, why: 'read from the pad, twice alike', map: map.id };
  if (kept.is === 'unkept') return { ok: false, problem: kept.problem };
  return done({ image: second.value, map, unit: kind.value.unit });
}

/** Commands that reading so many bytes takes. */
export function readsOf({ protocol }: Exchange, bytes: number): number {
  return Math.ceil(bytes / protocol.read.block);
}

export function* readWhole(exchange: Exchange, size: number): Steps<Result<Uint8Array>> {
  if (exchange.tally.step === 'identify') exchange.tally.step = 'read';
  return yield* readRange(exchange, { offset: 0, length: size });
}

export function* readRange(exchange: Exchange, { offset, length }: ByteRange): Steps<Result<Uint8Array>> {
  const { read } = exchange.protocol;
  const bytes = new Uint8Array(length);
  for (let at = 0; at < length; at += read.block) {
    const part = Math.min(read.block, length - at);
    const told = yield* ask(exchange, read.code, { offset: offset + at, length: part });
    if (!told.ok) return told;
    bytes.set(told.value.subarray(0, part), at);
  }
  return done(bytes);
}
