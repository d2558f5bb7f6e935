/** Drift of the rest of one axis: its slope over time. */
import { linearFit } from '../numeric/linear-fit.ts';
import { studentT } from '../numeric/student-t.ts';
import { variance } from '../numeric/variance.ts';

export interface AxisDrift {
  /** Counts per second, in the sense of the counts given. */
  readonly slope: number;
  /** Expanded uncertainty of the slope at 95 %: t(0.975, n − 2) · its standard error. */
  readonly u95: number;
  /** The slope is told from zero at that level. */
  readonly significant: boolean;
  /** Scatter of the rest points about the line, counts, with n − 2 degrees of freedom. */
  readonly residualDeviation: number;
  readonly degrees: number;
  /** From the first release to the last. */
  readonly seconds: number;
}

/**
 * Least-squares line through the rest points of an axis over the middles of their dwells. Null with fewer than 3. Points on
 * counts of a `step` may all be rounded the same way and show no scatter: step/√12 of each counts as uncertainty, too.
 */
export function axisDrift(seconds: readonly number[], counts: readonly number[], step = 0): AxisDrift | null {
  const fit = linearFit(seconds, counts);
  if (fit?.slopeError == null || fit.residualDeviation === null) return null;
  const rounding = step / Math.sqrt(12 * variance(seconds) * (seconds.length - 1));
  const u95 = studentT(0.975, fit.degrees) * Math.hypot(fit.slopeError, rounding);
  return {
    slope: fit.slope,
    u95,
    significant: Math.abs(fit.slope) > u95,
    residualDeviation: fit.residualDeviation,
    degrees: fit.degrees,
    seconds: Math.max(...seconds) - Math.min(...seconds),
  };
}
