import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import { measureRest } from '../../../core/measure/rest.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';
import { makeBenchStick, makeEvidence, type DwellWish } from '../../support/make-evidence.ts';

const mapping: StickMapping = {
  x: { min: 1048, centre: 2048, max: 3048 },
  y: { min: 1048, centre: 2048, max: 3048 },
};

const spot = fc.record({ x: fc.integer({ min: 1900, max: 2200 }), y: fc.integer({ min: 1900, max: 2200 }) });
const spots = fc.array(spot, { minLength: 3, maxLength: 30 });

function measure(points: readonly Pair[], under: StickMapping = mapping) {
  const dwells = points.map((point, index): DwellWish => ({ point, seconds: 2 * index }));
  return measureRest(makeEvidence({ dwells }), under)!;
}

describe('measureRest', () => {
  it('is null without a rest capture and without a settled release', () => {
    expect(measureRest(makeEvidence({}), mapping)).toBeNull();
    expect(measureRest(makeEvidence({ dwells: [] }), mapping)).toBeNull();
  });

  it('from one release gives a point, and null for what takes more', () => {
    const rest = measure([{ x: 2058, y: 2028 }]);
    expect(rest).toMatchObject({
      releases: 1,
      point: { x: 2058, y: 2028 },
      u95: { x: null, y: null },
      enclosing: { x: 2058, y: 2028, radius: 0 },
      covariance: null,
      noise: null,
      hysteresis: { x: null, y: null },
      drift: null,
      toleranceRadius: null,
    });
    expect(rest.offset.x).toBeCloseTo(0.01, 12);
    expect(rest.offset.y).toBeCloseTo(-0.02, 12);
    expect(rest.offset.magnitude).toBeCloseTo(Math.hypot(0.01, 0.02), 12);
  });

  it('of a stick that only lay still states where, and nothing that releases prove', () => {
    const still = makeEvidence({
      dwells: [{ point: { x: 2058, y: 2048 }, readings: [2057, 2048, 2060, 2048], variance: { x: 4, y: 1 } }],
    }).rest!.dwells;
    const rest = measureRest({ ...makeEvidence({}), still }, mapping)!;
    expect(rest).toMatchObject({
      releases: 0,
      point: { x: 2058, y: 2048 },
      u95: { x: null, y: null },
      covariance: null,
      noise: { x: 2, y: 1 },
      peakToPeak: { x: 3, y: 0 },
      drift: null,
      toleranceRadius: null,
    });
    expect(rest.offset.largest).toBeCloseTo(0.012, 12);
  });

  it('states known figures of four releases', () => {
    const points = [
      { x: 2044, y: 2048 },
      { x: 2052, y: 2048 },
      { x: 2048, y: 2042 },
      { x: 2048, y: 2054 },
    ];
    const rest = measure(points);
    expect(rest.point).toEqual({ x: 2048, y: 2048 });
    expect(rest.enclosing).toEqual({ x: 2048, y: 2048, radius: 6 });
    expect(rest.covariance?.xx).toBeCloseTo(32 / 3, 12);
    expect(rest.covariance?.xy).toBeCloseTo(0, 12);
    expect(rest.covariance?.yy).toBeCloseTo(24, 12);
    expect(rest.offset.largest).toBeCloseTo(0.006, 12);
    expect(rest.step).toEqual({ x: 1, y: 1 });
  });

  it('takes the largest deflection over all readings, not over the means', () => {
    const dwells = [{ point: { x: 2048, y: 2048 }, readings: [2048, 2048, 2060, 2048, 2040, 2032] }];
    expect(measureRest(makeEvidence({ dwells }), mapping)?.offset.largest).toBeCloseTo(Math.hypot(0.008, 0.016), 12);
  });

  it('states no tolerance radius below twelve releases', () => {
    const radius = (releases: number) =>
      measureRest(
        makeBenchStick({ seed: 5, releases, rest: { x: 2060, y: 2040 }, scatter: 4, noise: 1, gate: 900 }),
        mapping,
      )?.toleranceRadius;
    expect(radius(11)).toBeNull();
    expect(radius(12)).toBeGreaterThan(0);
  });

  it('gives a tolerance radius no smaller than the largest deflection seen and the region around the mean', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 12, max: 40 }), (seed, releases) => {
        const stick = { seed, releases, rest: { x: 2100, y: 2000 }, scatter: 5, noise: 1.5, gate: 900 };
        const rest = measureRest(makeBenchStick(stick), mapping)!;
        expect(rest.toleranceRadius).toBeGreaterThanOrEqual(rest.offset.largest);
        expect(rest.toleranceRadius).toBeGreaterThan(rest.offset.magnitude);
      }),
      { seed: 91, numRuns: 30 },
    );
  });

  it('widens identical rests by the step, so that they do not pretend to be exact', () => {
    const points = Array.from({ length: 24 }, () => ({ x: 2048, y: 2048 }));
    const rest = measure(points);
    // c(24) is about 4.2; S = I/12.
    expect(rest.toleranceRadius).toBeGreaterThan((4 * Math.sqrt(1 / 12)) / 1000);
    expect(rest.toleranceRadius).toBeLessThan((4.4 * Math.sqrt(1 / 12)) / 1000);
    expect(rest.u95.x).toBeCloseTo(1.959964 / Math.sqrt(12), 6);
  });

  it('takes the step of a comb for a larger uncertainty', () => {
    const dwells = Array.from({ length: 24 }, () => ({ point: { x: 2048, y: 2048 } }));
    const rest = measureRest({ ...makeEvidence({ dwells }), step: { x: 8, y: 1 } }, mapping)!;
    expect(rest.step).toEqual({ x: 8, y: 1 });
    expect(rest.u95.x).toBeCloseTo((8 * 1.959964) / Math.sqrt(12), 5);
    expect(rest.toleranceRadius).toBeGreaterThan(measure(dwells.map(({ point }) => point)).toleranceRadius! * 7.9);
  });

  it('moves with the counts and leaves every difference as it was', () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: -500, max: 500 }), (points, shift) => {
        const before = measure(points);
        const after = measure(points.map(({ x, y }) => ({ x: x + shift, y: y - shift })));
        expect(after.point.x).toBeCloseTo(before.point.x + shift, 8);
        expect(after.point.y).toBeCloseTo(before.point.y - shift, 8);
        expect(after.enclosing.radius).toBeCloseTo(before.enclosing.radius, 8);
        expect(after.covariance?.xy).toBeCloseTo(before.covariance?.xy ?? Number.NaN, 6);
        expect(after.u95.x).toBeCloseTo(before.u95.x ?? Number.NaN, 6);
        expect(after.drift?.y).toBeCloseTo(before.drift?.y ?? Number.NaN, 8);
      }),
      { seed: 92, numRuns: 60 },
    );
  });

  it('grows with the counts: a point by the factor, a covariance by its square, a deflection not at all', () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: 2, max: 9 }), (points, factor) => {
        const before = measure(points);
        const axis = { min: 1048 * factor, centre: 2048 * factor, max: 3048 * factor };
        const scaled = points.map(({ x, y }) => ({ x: x * factor, y: y * factor }));
        const after = measure(scaled, { x: axis, y: axis });
        expect(after.point.x).toBeCloseTo(before.point.x * factor, 7);
        expect(after.covariance?.yy).toBeCloseTo((before.covariance?.yy ?? Number.NaN) * factor ** 2, 5);
        expect(after.offset.magnitude).toBeCloseTo(before.offset.magnitude, 10);
        expect(after.offset.largest).toBeCloseTo(before.offset.largest, 10);
      }),
      { seed: 93, numRuns: 60 },
    );
  });

  it('does not depend on the order in which releases were taken', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 0, max: 23 }), (seed, shift) => {
        const evidence = makeBenchStick({
          seed,
          releases: 24,
          rest: { x: 2070, y: 2010 },
          scatter: 3,
          noise: 1,
          gate: 900,
        });
        const dwells = evidence.rest!.dwells;
        const turned = dwells.map((_, index) => dwells[(index + shift) % dwells.length]!).reverse();
        const before = measureRest(evidence, mapping)!;
        const after = measureRest({ ...evidence, rest: { dwells: turned } }, mapping)!;
        expect(after.point.x).toBeCloseTo(before.point.x, 9);
        expect(after.toleranceRadius).toBeCloseTo(before.toleranceRadius!, 9);
        expect(after.hysteresis.y).toBeCloseTo(before.hysteresis.y!, 9);
        expect(after.drift?.x).toBeCloseTo(before.drift!.x, 9);
        expect(after.u95.y).toBeCloseTo(before.u95.y!, 9);
        expect(after.enclosing.radius).toBeCloseTo(before.enclosing.radius, 9);
      }),
      { seed: 94, numRuns: 20 },
    );
  });

  it('keeps positions as reported and turns differences where y grows downwards', () => {
    const points = [
      { x: 120, y: 140 },
      { x: 124, y: 136 },
      { x: 128, y: 130 },
    ];
    const dwells = points.map((point, index): DwellWish => ({ point, seconds: index }));
    const rest = measureRest(makeEvidence({ fields: reportedFields, dwells }), rangeMapping(reportedFields))!;
    expect(rest.point.y).toBeCloseTo(406 / 3, 12);
    expect(rest.covariance?.xy).toBeCloseTo(20, 12);
    expect(rest.drift?.x).toBeCloseTo(4, 12);
    expect(rest.drift?.y).toBeCloseTo(5, 12);
    expect(rest.offset.y).toBeLessThan(0);
  });

  it('of a turned y axis states the same differences and deflections as of the plain one', () => {
    const stick = { seed: 7, releases: 24, rest: { x: 2070, y: 2010 }, scatter: 3, noise: 1, gate: 900 };
    const plain = makeBenchStick(stick);
    const turned = {
      ...plain,
      fields: { ...sensorFields, y: { ...sensorFields.y, up: -1 as const } },
      rest: {
        dwells: plain.rest!.dwells.map((dwell) => ({
          ...dwell,
          point: { x: dwell.point.x, y: 4096 - dwell.point.y },
          readings: dwell.readings.map((count, index) => (index % 2 === 0 ? count : 4096 - count)),
          least: { x: dwell.least.x, y: 4096 - dwell.greatest.y },
          greatest: { x: dwell.greatest.x, y: 4096 - dwell.least.y },
        })),
      },
    };
    const one = measureRest(plain, mapping)!;
    const other = measureRest(turned, mapping)!;
    expect(other.point.y).toBeCloseTo(4096 - one.point.y, 9);
    expect(other.covariance?.xy).toBeCloseTo(one.covariance!.xy, 9);
    expect(other.hysteresis.y).toBeCloseTo(one.hysteresis.y!, 9);
    expect(other.drift?.y).toBeCloseTo(one.drift!.y, 9);
    expect(other.offset.y).toBeCloseTo(one.offset.y, 9);
    expect(other.toleranceRadius).toBeCloseTo(one.toleranceRadius!, 9);
  });
});
