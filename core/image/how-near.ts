/** How well sticks fit the measured numbers, so that ways to read the same bytes can be compared. */
import type { LayoutNumber } from './finder-layouts.ts';
import type { NearStick, NearSticks } from './near-stick.ts';
import { readNumber } from './number-lanes.ts';
import { soughtNumber } from './sought-numbers.ts';

/** Stored numbers and measured ones of the very same stick differ by some such share of its span. */
const MEASURED_TO = 0.003;
/** One that is so many times less likely than another is told no more. */
const TIMES_AS_LIKELY = 1000;

/** Mean square of how far off the numbers are as they are stored, in shares of the measured span, of sticks together. */
export function meanSquare(sticks: NearSticks, image: Uint8Array): number {
  const squares = sticks.flatMap((stick) => stick.layout.numbers.map((number) => offBy(stick, number, image) ** 2));
  return MEASURED_TO ** 2 + squares.reduce((sum, square) => sum + square, 0) / squares.length;
}

/**
 * The largest mean square that is about as likely as one of so many sticks. A stored part was another one than the measured, and
 * nobody knows how different: the nearest reading itself tells how far off numbers are here, and another is as likely as if they
 * scattered so (the ratio of likelihoods of normal errors of unknown size).
 */
export function aboutAsLikely(nearest: number, sticks: number): number {
  return nearest * TIMES_AS_LIKELY ** (2 / (6 * sticks));
}

function offBy({ layout, sought, offset }: NearStick, number: LayoutNumber, image: Uint8Array): number {
  const { edges } = number.axis === 0 ? sought.first : sought.second;
  const read = readNumber(image, number.lane, offset + number.at);
  return (read - soughtNumber(layout, number, sought)) / (edges.high - edges.low);
}
