/** Whether a stored mapping can be one at all. */
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import type { MemoryMap } from './memory-map.ts';

/** Edges within 0 … 2^bits − 1, min < centre < max, and at least the least span to either side. */
export function isPlausible(mapping: StickMapping, rule: MemoryMap['plausible']): boolean {
  return isAxisPlausible(mapping.x, rule) && isAxisPlausible(mapping.y, rule);
}

function isAxisPlausible({ min, centre, max }: AxisMapping, { bits, leastSpan }: MemoryMap['plausible']): boolean {
  return min >= 0 && max < 2 ** bits && centre - min >= leastSpan && max - centre >= leastSpan;
}

/** The first reason, in one sentence. */
export function whyImplausible(mapping: StickMapping | null, rule: MemoryMap['plausible']): string {
  if (mapping === null) return 'The bytes hold numbers of more bits than the codec has.';
  const name = isAxisPlausible(mapping.x, rule) ? 'y' : 'x';
  const { min, centre, max } = mapping[name];
  const three = `${name} would be ${min}, ${centre}, ${max}`;
  if (min < 0 || max >= 2 ** rule.bits) return `${three}, beyond the ${rule.bits} bits of a count.`;
  return `${three}, with less than ${rule.leastSpan} counts to one side of the centre.`;
}
