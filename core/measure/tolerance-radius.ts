/** How large the deflection at rest can be taken to be, beyond the releases that were seen. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { covariance2 } from '../numeric/covariance.ts';
import { toleranceFactor } from '../numeric/tolerance-factor.ts';
import { largestInEllipse } from './largest-in-ellipse.ts';
import { meanRest } from './mean-rest.ts';
import { largestAtRest, largestDeparture } from './rest-deflection.ts';

/**
 * A fraction: largest |d| over the region that holds 99 % of releases with 95 % confidence, (u − ū)ᵀS⁻¹(u − ū) ≤ c(n)²
 * with S, the covariance of the rest points, widened by q²/12 of the effective step; plus the largest departure of a
 * reading from its dwell's mean; never less than the largest deflection seen. Null with fewer releases than the evidence says are needed, 12 at least.
 * It rests on the rest points being normally distributed: look at their cloud before trusting it.
 */
export function toleranceRadius(evidence: StickEvidence, mapping: StickMapping): number | null {
  const dwells = evidence.rest?.dwells ?? [];
  if (dwells.length < (evidence.releasesNeeded ?? LEAST_RELEASES)) return null;
  const covariance = covariance2(dwells.flatMap(({ point }) => [point.x, point.y]));
  const factor = toleranceFactor(dwells.length);
  if (covariance === null || factor === null) return null;
  const { fields } = evidence;
  const step = evidence.step ?? { x: 1, y: 1 };
  const widened = {
    xx: covariance.xx + step.x ** 2 / 12,
    xy: covariance.xy,
    yy: covariance.yy + step.y ** 2 / 12,
  };
  const region = largestInEllipse(mapping, fields, meanRest(dwells), widened, factor);
  return Math.max(region + largestDeparture(dwells, mapping, fields), largestAtRest(dwells, mapping, fields));
}
