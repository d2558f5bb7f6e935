/** The time-weighted mean of a dwell under way: each reading counts as long as it holds. */
import type { Pair } from '../../pad/stick.ts';

export class DwellMean {
  #sinceUs = 0;
  #lastUs = Number.NaN;
  #x = Number.NaN;
  #y = Number.NaN;
  /** The reading at the beginning, which the sums are taken from so that they stay small. */
  #first: Pair = { x: 0, y: 0 };
  #xSum = 0;
  #ySum = 0;

  start(t: number): void {
    this.#sinceUs = t;
    this.#lastUs = t;
    this.#first = { x: this.#x, y: this.#y };
    this.#xSum = 0;
    this.#ySum = 0;
  }

  advance(t: number): void {
    this.#xSum += (t - this.#lastUs) * (this.#x - this.#first.x);
    this.#ySum += (t - this.#lastUs) * (this.#y - this.#first.y);
    this.#lastUs = t;
  }

  /** From now on; `advance` to now first. */
  reading(t: number, x: number, y: number): void {
    this.#lastUs = t;
    this.#x = x;
    this.#y = y;
  }

  /** Up to the last advance, raw counts. */
  get mean(): Pair {
    const length = this.#lastUs - this.#sinceUs;
    return length === 0
      ? this.#first
      : { x: this.#first.x + this.#xSum / length, y: this.#first.y + this.#ySum / length };
  }
}
