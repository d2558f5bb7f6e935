/** Follows one push and let-go, and says what was wrong with it. */
import { angleOf } from '../../geometry/angle.ts';
import type { Pair } from '../../pad/stick.ts';

/** Why a flick is asked for once more. */
export type FlickFault = 'not-full' | 'aside' | 'led-back' | 'button' | 'gap' | 'pushed-again';

/** A push tilts the stick by at least this share of the half range. */
export const PUSH_SHARE = 0.2;
/** Let go: the stick came back by half of the push. */
const RETURN_SHARE = 0.5;
/** Full tilt: this share of the reach once known, else of the half range. */
const FULL_OF_REACH = 0.85;
const FULL_UNKNOWN = 0.4;
/** From this share of the push to the half of it a free stick takes some hundredths of a second. */
const HIGH_SHARE = 0.9;
const LONGEST_RETURN_US = 120_000;
const ASIDE_DEGREES = 35;

export class FlickWatch {
  readonly #toward: number | null;
  readonly #reach: number | null;
  #furthest = 0;
  #direction = 0;
  /** Up to here it was held high: a reading holds until the next. */
  #highUs = Number.NaN;
  #wasHigh = false;
  #isReleased = false;
  #fault: FlickFault | null = null;

  /** `toward` is the direction asked for, if any; `reach` is the tilt at the gate where it is known. */
  constructor(toward: number | null, reach: number | null) {
    this.#toward = toward;
    this.#reach = reach;
  }

  get isPushed(): boolean {
    return this.#furthest >= PUSH_SHARE;
  }

  get isReleased(): boolean {
    return this.#isReleased;
  }

  /** Told once it was let go. */
  get fault(): FlickFault | null {
    return this.#fault;
  }

  get furthest(): number {
    return this.#furthest;
  }

  /** `tilt` in shares of the half range. */
  sample(t: number, tilt: Pair, buttonDown: boolean): void {
    if (this.#isReleased) return;
    const size = Math.hypot(tilt.x, tilt.y);
    if (size > this.#furthest) {
      this.#furthest = size;
      this.#direction = angleOf(tilt.x, tilt.y);
    }
    if (!this.isPushed) return;
    if (buttonDown) this.#fault ??= 'button';
    if (this.#wasHigh) this.#highUs = t;
    this.#wasHigh = size >= HIGH_SHARE * this.#furthest;
    if (size <= RETURN_SHARE * this.#furthest) this.#release(t);
  }

  /** Reports were lost: the return may be among them. */
  gap(): void {
    if (this.isPushed) this.#fault ??= 'gap';
  }

  #release(t: number): void {
    this.#isReleased = true;
    const full = this.#reach === null ? FULL_UNKNOWN : FULL_OF_REACH * this.#reach;
    if (this.#furthest < full) this.#fault ??= 'not-full';
    else if (this.#toward !== null && aside(this.#direction, this.#toward) > ASIDE_DEGREES) this.#fault ??= 'aside';
    else if (t - this.#highUs > LONGEST_RETURN_US) this.#fault ??= 'led-back';
  }
}

function aside(a: number, b: number): number {
  const between = Math.abs(a - b) % 360;
  return Math.min(between, 360 - between);
}
