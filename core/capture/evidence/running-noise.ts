/** The noise of an axis as it comes, from its latest readings. */
import { LatestMedian } from './latest-median.ts';

const LATEST = 31;
/** Of normal noise the median of |d| is σ/1.4826; the second difference of white noise has 6σ². */
const SIGMA = 1.4826 / Math.sqrt(6);

export class RunningNoise {
  readonly #seconds = new LatestMedian(LATEST);
  readonly #intervals = new LatestMedian(LATEST);
  #t = Number.NaN;
  #last = Number.NaN;
  #before = Number.NaN;
  #count = 0;

  reading(t: number, count: number): void {
    const second = 2 * this.#last - this.#before - count;
    if (!Number.isNaN(second)) {
      this.#seconds.add(Math.abs(second));
      this.#intervals.add(t - this.#t);
      this.#count += 1;
    }
    this.#before = this.#last;
    this.#last = count;
    this.#t = t;
  }

  /** σ of the mean over a time, counts: σ·√(interval/time); 0 before there are enough readings to tell. */
  ofMean(micros: number): number {
    if (this.#count < LATEST) return 0;
    return SIGMA * this.#seconds.median * Math.sqrt(Math.min(1, this.#intervals.median / micros));
  }
}
