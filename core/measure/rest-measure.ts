/** Rest of one stick, as `measure` prints it. Offsets and deflections are fractions under a mapping; the rest is counts. */
import type { Pair } from '../pad/stick.ts';

export interface RestMeasure {
  readonly releases: number;
  readonly point: Pair;
  readonly u95: { readonly x: number | null; readonly y: number | null };
  /** The effective step of the counts, 1 unless the readings show a comb. */
  readonly step: Pair;
  readonly enclosing: { readonly x: number; readonly y: number; readonly radius: number };
  readonly covariance: { readonly xx: number; readonly xy: number; readonly yy: number } | null;
  /** Null on an axis whose count never changed. */
  readonly noise: { readonly x: number | null; readonly y: number | null } | null;
  readonly noiseBelowStep: { readonly x: boolean; readonly y: boolean } | null;
  readonly peakToPeak: Pair;
  readonly hysteresis: { readonly x: number | null; readonly y: number | null };
  /** Counts per second, with the expanded uncertainty of the slope. */
  readonly drift: { readonly x: number; readonly y: number; readonly u95: Pair } | null;
  readonly offset: {
    readonly x: number;
    readonly y: number;
    readonly magnitude: number;
    /** Largest magnitude of the deflection over all settled readings. */
    readonly largest: number;
  };
  readonly toleranceRadius: number | null;
}
