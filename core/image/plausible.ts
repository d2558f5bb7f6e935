/** Whether a stored mapping can be one at all. */
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import type { MemoryMap } from './memory-map.ts';

/**
 * A stick rests near the middle of its range: none that works has one side this many times as wide as the other. Bits and a least
 * span alone would let almost any three rising numbers of 16 bits be a stick.
 */
const MOST_UNEVEN = 3;

/** Edges within 0 … 2^bits − 1, min < centre < max, at least the least span to either side, and no side far wider than the other. */
export function isPlausible(mapping: StickMapping, rule: MemoryMap['plausible']): boolean {
  return whyNot(mapping.x, rule) === null && whyNot(mapping.y, rule) === null;
}

/** The first reason, in one sentence. */
export function whyImplausible(mapping: StickMapping | null, rule: MemoryMap['plausible']): string {
  if (mapping === null) return 'The bytes hold numbers of more bits than the codec has.';
  const name = whyNot(mapping.x, rule) === null ? 'y' : 'x';
  const { min, centre, max } = mapping[name];
  return `${name} would be ${min}, ${centre}, ${max}, ${whyNot(mapping[name], rule) ?? 'as a stick can be'}.`;
}

function whyNot({ min, centre, max }: AxisMapping, { bits, leastSpan }: MemoryMap['plausible']): string | null {
  const [below, above] = [centre - min, max - centre];
  const [less, more] = [Math.min(below, above), Math.max(below, above)];
  if (min < 0 || max >= 2 ** bits) return `beyond the ${bits} bits of a count`;
  if (less < leastSpan) return `with less than ${leastSpan} counts to one side of the centre`;
  return more > MOST_UNEVEN * less ? `with one side more than ${MOST_UNEVEN} times as wide as the other` : null;
}
