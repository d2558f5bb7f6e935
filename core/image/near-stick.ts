/** A place where numbers that are sought may stand, alone or beside another. */
import type { Layout } from './finder-layouts.ts';
import type { Sought } from './finder-targets.ts';
import type { NearbyNumbers } from './nearby-numbers.ts';

/** Two sticks of one layer stand this near, bytes. */
export const TWIN_WITHIN = 64;

/** A stick that decodes to min < centre < max with all six numbers, as they are stored, near those sought. */
export interface NearStick {
  readonly sought: Sought;
  readonly layout: Layout;
  readonly offset: number;
  /** Largest difference of one of its six numbers from the one sought, counts. */
  readonly furthest: number;
  /** Chance at any one byte, by the whole image. */
  readonly share: number;
  readonly nearby: NearbyNumbers;
}

/** One stick, or two side by side. */
export type NearSticks = readonly [NearStick] | readonly [NearStick, NearStick];

/** Both sticks stand in one form: packed in whatever order, or the same words; without a byte in common. */
export function isPair(one: NearStick, other: NearStick): boolean {
  if (one.sought.axes !== other.sought.axes || Math.abs(one.offset - other.offset) > TWIN_WITHIN) return false;
  const isKin = one.layout === other.layout || [one, other].every(({ layout }) => layout.codecs.xy.form === 'packed12');
  return isKin && !isOver(one, other);
}

/** Whether two sticks have a byte in common. */
export function isOver(one: NearStick, other: NearStick): boolean {
  return one.offset < other.offset + other.layout.length && other.offset < one.offset + one.layout.length;
}

/** From the first byte to behind the last. */
export function endsOf(sticks: NearSticks): { readonly start: number; readonly end: number } {
  return {
    start: Math.min(...sticks.map(({ offset }) => offset)),
    end: Math.max(...sticks.map(({ offset, layout }) => offset + layout.length)),
  };
}
