/** Sticks of an image by where they stand. */
import type { NearStick } from './near-stick.ts';

/** Those that begin from one byte to before another; `sorted` by their offsets. */
export function sticksBetween(sorted: readonly NearStick[], from: number, to: number): readonly NearStick[] {
  return sorted.slice(firstFrom(sorted, from), firstFrom(sorted, to));
}

function firstFrom(sorted: readonly NearStick[], offset: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.offset ?? 0) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}
