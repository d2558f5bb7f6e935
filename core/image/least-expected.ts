/** The place of each set of numbers that chance explains least, while an image is read. */
import type { StickId } from '../pad/stick.ts';
import { expectedOf, expectedPair } from './expected-places.ts';
import { isPair, TWIN_WITHIN, type NearStick, type NearSticks } from './near-stick.ts';

/** Takes sticks in the order of their offsets. */
export class LeastExpected {
  /** By set: the least that was expected of one of its places; infinite where that was more than `most`. */
  readonly least: Float64Array;
  readonly #most: number;
  readonly #bytes: number;
  /** By set: sticks that a later one may stand beside, in the order of their offsets. */
  readonly #recent: readonly Readonly<Record<StickId, NearStick[]>>[];

  /** Of an image of so many bytes. */
  constructor(sets: number, bytes: number, most: number) {
    this.least = new Float64Array(sets).fill(Number.POSITIVE_INFINITY);
    this.#most = most;
    this.#bytes = bytes;
    this.#recent = Array.from({ length: sets }, () => ({ left: [], right: [] }));
  }

  take(near: NearStick): void {
    const { set, stick } = near.sought;
    const recent = this.#recent[set];
    if (recent === undefined) return;
    this.#weigh(set, [near]);
    dropBefore(recent.left, near.offset - TWIN_WITHIN);
    dropBefore(recent.right, near.offset - TWIN_WITHIN);
    for (const one of recent[stick === 'left' ? 'right' : 'left'])
      if (this.#isLess(set, one, near) && isPair(one, near)) this.#weigh(set, [one, near]);
    recent[stick].push(near);
  }

  /** Most pairs end here. */
  #isLess(set: number, one: NearStick, other: NearStick): boolean {
    return expectedPair(this.#bytes, one.share, other.share) <= this.#bound(set);
  }

  #weigh(set: number, sticks: NearSticks): void {
    const bound = this.#bound(set);
    const expected = expectedOf(sticks, this.#bytes, bound);
    if (expected <= bound) this.least[set] = expected;
  }

  #bound(set: number): number {
    return Math.min(this.#most, this.least[set] ?? 0);
  }
}

function dropBefore(sticks: NearStick[], offset: number): void {
  let count = 0;
  while (count < sticks.length && (sticks[count]?.offset ?? offset) < offset) count += 1;
  if (count > 0) sticks.splice(0, count);
}
