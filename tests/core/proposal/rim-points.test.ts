import { describe, expect, it } from 'vitest';
import { checkCoverage, coveredRimPoints, fromCentre } from '../../../core/proposal/rim-points.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeEvidence, sixTurns, type TurnWish } from '../../support/make-evidence.ts';

const about = { x: 128, y: 120 };

function covered(without: (degrees: number) => boolean) {
  return Array.from({ length: 72 }, (_, index) => 5 * index)
    .filter((angle) => !without(angle))
    .map((angle) => ({ angle, u: about }));
}

describe('coveredRimPoints', () => {
  it('are raw counts of the covered directions alone', () => {
    const turns: TurnWish[] = [
      ...sixTurns((degrees) => (degrees < 20 || degrees === 90 ? 100 : null)),
      { way: 'clockwise', radius: (degrees) => (degrees === 180 ? 50 : null) },
    ];
    const points = coveredRimPoints(makeEvidence({ fields: reportedFields, turns, about }));
    expect(points.map(({ angle }) => angle)).toEqual([0, 5, 10, 15, 90]);
    expect(points[0]?.u).toEqual({ x: 228, y: 120 });
    // Up is where the count falls.
    expect(points[4]?.u.x).toBeCloseTo(128, 12);
    expect(points[4]?.u.y).toBeCloseTo(20, 12);
    expect(coveredRimPoints(makeEvidence({}))).toEqual([]);
  });
});

it('fromCentre has y up where the count grows downwards', () => {
  const evidence = makeEvidence({ fields: reportedFields });
  expect(fromCentre({ x: 130, y: 100 }, { x: 120, y: 125 }, evidence)).toEqual({ x: 10, y: 25 });
});

describe('checkCoverage', () => {
  const gap = (from: number, to: number, allowed: number) =>
    checkCoverage(
      covered((angle) => angle >= from && angle <= to),
      allowed,
      'even',
    );

  it('lets a gap of just the allowed width pass and refuses one direction more', () => {
    expect(gap(100, 105, 10)).toEqual({ ok: true, value: null });
    expect(gap(100, 110, 10)).toEqual({
      ok: false,
      problem: {
        code: 'proposal-not-covered',
        says: 'The rim is not covered from 100° to 110°, and a gap may be 10° wide at most: turn the stick slowly through there, then ask for even again.',
      },
    });
    expect(gap(0, -1, 0)).toEqual({ ok: true, value: null });
  });

  it('judges the widest gap, not all of them together', () => {
    const apart = covered((angle) => angle % 20 === 0);
    expect(checkCoverage(apart, 5, 'even').ok).toBe(true);
    expect(checkCoverage(apart, 4, 'even').ok).toBe(false);
  });

  it('says that nothing is covered where no direction is', () => {
    const refused = checkCoverage([], 85, 'full-reach');
    expect(refused.ok ? '' : refused.problem.says).toContain('No direction of the rim is covered');
  });
});
