/** How long a stick has stood in one place, noise aside. */
import type { Pair } from '../../pad/stick.ts';

/** A stick that stays within this share of the half range stands: more than noise, less than a tenth of a slow sweep. */
const STANDS_WITHIN = 0.02;

export class StandWatch {
  #place: Pair = { x: Number.NaN, y: Number.NaN };
  #sinceUs = Number.NaN;

  /** `tilt` in shares of the half range. */
  sample(t: number, tilt: Pair): void {
    if (Math.hypot(tilt.x - this.#place.x, tilt.y - this.#place.y) <= STANDS_WITHIN) return;
    this.#place = tilt;
    this.#sinceUs = t;
  }

  /** What comes is judged anew, e.g. after reports were lost. */
  forget(): void {
    this.#place = { x: Number.NaN, y: Number.NaN };
    this.#sinceUs = Number.NaN;
  }

  /** Microseconds up to `t`; 0 before the first sample. */
  standsFor(t: number): number {
    return Number.isNaN(this.#sinceUs) ? 0 : t - this.#sinceUs;
  }
}
