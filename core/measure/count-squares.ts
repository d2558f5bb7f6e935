/** Squares of deviations, gathered by the count they stand at, and looked at through windows of so many of them. */
import type { CountRun } from './travel-measure.ts';

/** More counts than these are not held. */
const MOST_COUNTS = 2 ** 20;

export class CountSquares {
  readonly #min: number;
  readonly #sums: Float64Array;
  readonly #numbers: Uint32Array;

  /** For whole counts `min` … `max`; null where there are none, or too many. */
  static over(min: number, max: number): CountSquares | null {
    const places = Math.round(max - min) + 1;
    return places >= 2 && places <= MOST_COUNTS ? new CountSquares(min, places) : null;
  }

  private constructor(min: number, places: number) {
    this.#min = min;
    this.#sums = new Float64Array(places);
    this.#numbers = new Uint32Array(places);
  }

  /** What stands outside of the counts is left out. */
  add(count: number, square: number): void {
    const place = Math.round(count - this.#min);
    if (!(place >= 0 && place < this.#sums.length)) return;
    this.#sums[place] = (this.#sums[place] ?? 0) + square;
    this.#numbers[place] = (this.#numbers[place] ?? 0) + 1;
  }

  /** Means of windows side by side, each of at least so many squares, and the share of counts in windows no wider than `widest`. */
  windows(size: number, widest: number): { readonly means: readonly number[]; readonly coveredShare: number } {
    const means: number[] = [];
    let covered = 0;
    let next = 0;
    this.#slide(size, (from, to, mean) => {
      if (from < next) return;
      next = to;
      means.push(mean);
      if (to - from <= widest) covered += to - from;
    });
    return { means, coveredShare: covered / this.#sums.length };
  }

  /**
   * Stretches that windows of so many squares with a mean above `least` make together, each drawn in to the part whose
   * squares exceed `divide` most in sum; with the mean of its squares.
   */
  stretchesAbove(size: number, least: number, divide: number): (CountRun & { readonly mean: number })[] {
    const stretches: { from: number; to: number }[] = [];
    this.#slide(size, (from, to, mean) => {
      if (mean <= least) return;
      const last = stretches.at(-1);
      if (last !== undefined && from < last.to) last.to = to;
      else stretches.push({ from, to });
    });
    return stretches.map((stretch) => this.#drawIn(stretch, divide));
  }

  /** Every place with the fewest places from it on that hold so many squares. */
  #slide(size: number, take: (from: number, to: number, mean: number) => void): void {
    let [to, sum, number] = [0, 0, 0];
    for (let from = 0; from < this.#sums.length; from += 1) {
      for (; number < size && to < this.#sums.length; to += 1) {
        sum += this.#sums[to] ?? 0;
        number += this.#numbers[to] ?? 0;
      }
      if (number < size) return;
      take(from, to, sum / number);
      sum -= this.#sums[from] ?? 0;
      number -= this.#numbers[from] ?? 0;
    }
  }

  #drawIn({ from, to }: { from: number; to: number }, divide: number): CountRun & { readonly mean: number } {
    let best = { from, to, excess: Number.NEGATIVE_INFINITY };
    let [start, excess] = [from, 0];
    for (let place = from; place < to; place += 1) {
      if (excess <= 0) [start, excess] = [place, 0];
      excess += (this.#sums[place] ?? 0) - divide * (this.#numbers[place] ?? 0);
      if (excess > best.excess) best = { from: start, to: place + 1, excess };
    }
    let [sum, number] = [0, 0];
    for (let place = best.from; place < best.to; place += 1) {
      sum += this.#sums[place] ?? 0;
      number += this.#numbers[place] ?? 0;
    }
    return { from: this.#min + best.from, to: this.#min + best.to - 1, mean: sum / number };
  }
}
