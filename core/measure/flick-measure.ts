import type { Pair } from '../pad/stick.ts';

/** What a stick does when it is let go from full tilt, as `measure` prints it. Overshoot is a deflection. */
export interface FlickMeasure {
  /** Flicks that could be read. */
  readonly count: number;
  /** Lets go that came too sparsely timed, or did not settle, and are left out. */
  readonly unread: number;
  /** How far past the rest it comes out on the far side; `mean` over the flicks. */
  readonly overshoot: { readonly largest: number; readonly mean: number };
  /** The same in counts. */
  readonly overshootCounts: { readonly largest: number; readonly mean: number };
  /** From letting go until it stays at its rest. */
  readonly settlingUs: { readonly p50: number; readonly max: number };
  /** It stays at its rest while it is within this many counts of it, per axis. */
  readonly band: Pair;
  /** When each flick was let go, microseconds of the log. */
  readonly at: readonly number[];
}
