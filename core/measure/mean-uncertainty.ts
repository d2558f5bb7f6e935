/** Expanded uncertainty of a mean rest on one axis. */
import { studentT } from '../numeric/student-t.ts';
import { standardDeviation } from '../numeric/variance.ts';
import type { AxisDrift } from './axis-drift.ts';

/**
 * U = t(0.975, ν)·u_c in counts, JCGM 100: u_c² = s²/n + q²/12 + b²/12. s is the scatter of the rest points, q the
 * effective step, b the way that the rest drifted over the capture: counted only where the drift is significant, and then
 * s is the scatter about its line. ν by Welch and Satterthwaite (G.4.1), step and drift with infinite degrees, not
 * rounded. Null for fewer than two releases: nothing is known of their scatter.
 */
export function meanUncertainty95(counts: readonly number[], step: number, drift: AxisDrift | null): number | null {
  if (counts.length < 2) return null;
  const drifts = drift?.significant === true;
  const scatter = drifts ? drift.residualDeviation : standardDeviation(counts);
  const degrees = drifts ? drift.degrees : counts.length - 1;
  const way = drifts ? drift.slope * drift.seconds : 0;
  const ofScatter = scatter ** 2 / counts.length;
  const combined = ofScatter + (step ** 2 + way ** 2) / 12;
  const effective = ofScatter === 0 ? Number.POSITIVE_INFINITY : degrees * (combined / ofScatter) ** 2;
  return studentT(0.975, effective) * Math.sqrt(combined);
}
