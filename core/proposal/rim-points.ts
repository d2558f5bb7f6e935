/** The rim points that a proposal must fit: one of each covered direction. */
import type { StickEvidence } from '../capture/evidence.ts';
import { failed, done, type Result } from '../result.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { directionPoints } from '../measure/direction-points.ts';
import type { Pair } from '../pad/stick.ts';

export interface RimPoint {
  readonly angle: number;
  /** Raw counts as reported. */
  readonly u: Pair;
}

const STEP = 5;

/** Rim points of covered directions in raw counts; which they are does not depend on the mapping. */
export function coveredRimPoints(evidence: StickEvidence): RimPoint[] {
  const { rim, fields } = evidence;
  if (rim === null) return [];
  return directionPoints(rim.turns).flatMap(({ angle, point, state }) =>
    state === 'covered' && point !== null ? [{ angle, u: rawPoint(rim.about, fields, point) }] : [],
  );
}

/** Counts from a centre, y up. */
export function fromCentre(u: Pair, centre: Pair, evidence: StickEvidence): Pair {
  return { x: evidence.fields.x.up * (u.x - centre.x), y: evidence.fields.y.up * (u.y - centre.y) };
}

/** Refuses while a stretch of uncovered directions is wider than allowed; names the widest. */
export function checkCoverage(points: readonly RimPoint[], allowedDegrees: number, aim: string): Result<null> {
  const gap = widestGap(points);
  if (gap.degrees <= allowedDegrees) return done(null);
  return failed(
    'proposal-not-covered',
    points.length === 0
      ? `No direction of the rim is covered by two turns each way: turn the stick slowly along its gate, then ask for ${aim} again.`
      : `The rim is not covered from ${gap.from}° to ${gap.to}°: turn the stick slowly through there, then ask for ${aim} again.`,
  );
}

/** The longest run of uncovered directions, 5° each. */
export function widestGap(points: readonly RimPoint[]): { degrees: number; from: number; to: number } {
  if (points.length === 0) return { degrees: 360, from: 0, to: 355 };
  const angles = points.map((point) => point.angle);
  let widest = { degrees: 0, from: 0, to: 0 };
  for (const [index, angle] of angles.entries()) {
    const next = angles[(index + 1) % angles.length] ?? angle;
    const apart = (next - angle + 360) % 360 || 360;
    if (apart - STEP > widest.degrees) {
      widest = { degrees: apart - STEP, from: (angle + STEP) % 360, to: (next + 360 - STEP) % 360 };
    }
  }
  return widest;
}
