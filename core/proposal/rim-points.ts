/** The rim points that a proposal must fit: one of each covered direction. */
import { waysAlong } from '../capture/evidence/ways-along.ts';
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { widestGap } from '../capture/evidence/widest-gap.ts';
import { directionAngles } from '../geometry/directions.ts';
import { failed, done, type Result } from '../result.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { directionPoints } from '../measure/direction-points.ts';
import type { Pair } from '../pad/stick.ts';

export interface RimPoint {
  readonly angle: number;
  /** Raw counts as reported. */
  readonly u: Pair;
}

/** Rim points of covered directions in raw counts; which they are does not depend on the mapping. */
export function coveredRimPoints(evidence: StickEvidence): RimPoint[] {
  const { rim, fields } = evidence;
  if (rim === null) return [];
  return directionPoints(waysAlong(rim)).flatMap(({ angle, point, state }) =>
    state === 'covered' && point !== null ? [{ angle, u: rawPoint(rim.about, fields, point) }] : [],
  );
}

/** Counts from a centre, y up. */
export function fromCentre(u: Pair, centre: Pair, evidence: StickEvidence): Pair {
  return { x: evidence.fields.x.up * (u.x - centre.x), y: evidence.fields.y.up * (u.y - centre.y) };
}

/** Refuses while a stretch of uncovered directions is wider than allowed, in degrees; names the widest. */
export function checkCoverage(points: readonly RimPoint[], allowedDegrees: number, aim: string): Result<null> {
  const covered = new Set(points.map(({ angle }) => angle));
  const gap = widestGap(directionAngles.filter((angle) => !covered.has(angle)));
  if (gap.degrees <= allowedDegrees) return done(null);
  return failed(
    'proposal-not-covered',
    points.length === 0
      ? `No direction of the rim is covered by two turns each way: turn the stick slowly along its gate, then ask for ${aim} again.`
      : `The rim is not covered from ${gap.from}° to ${gap.to}°, and a gap may be ${allowedDegrees}° wide at most: turn the stick slowly through there, then ask for ${aim} again.`,
  );
}
