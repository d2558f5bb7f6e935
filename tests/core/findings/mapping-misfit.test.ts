import { describe, expect, it } from 'vitest';
import { findStaleMapping } from '../../../core/findings/find-stale-mapping.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { mappingMisfit } from '../../../core/findings/mapping-misfit.ts';
import { HALF, makeSubject, type SubjectWish } from './make-subject.ts';

/** An edge 2 % inside of the gate: 1250 / 1.02. */
const INSIDE = HALF / 1.02;
const fit = { min: 2048 - INSIDE, centre: 2048, max: 2048 + INSIDE };

function misfit(x: Partial<typeof fit>, wish: SubjectWish = {}) {
  return mappingMisfit(makeSubject({ mapping: { x: { ...fit, ...x }, y: fit }, ...wish }))!;
}
/** Reach of the gate 5° off +x where full output along x is so many counts away. */
const besides = (span: number): number => {
  const turn = (5 * Math.PI) / 180;
  return Math.hypot((HALF * Math.cos(turn)) / span, (HALF * Math.sin(turn)) / INSIDE);
};

describe('mappingMisfit', () => {
  it('finds nothing off where every edge stands 2 % inside of the gate', () => {
    const { centre, sides, worst } = misfit({});
    expect(centre).toBeCloseTo(0, 9);
    expect(sides.map(({ name, angle }) => [name, angle])).toEqual([
      ['right', 0],
      ['up', 90],
      ['left', 180],
      ['down', 270],
    ]);
    for (const { off } of sides) expect(off).toBeCloseTo(0, 9);
    expect(worst).toBeCloseTo(0, 9);
  });

  it('lets a side fall short by its best direction and overreach by its least', () => {
    const short = misfit({ max: 2048 + 1500 });
    expect(short.sides[0]?.off).toBeCloseTo(besides(1500) - 1.02, 9);
    expect(short.worst).toBeCloseTo(1.02 - besides(1500), 9);
    const far = misfit({ max: 2048 + 1000 });
    expect(far.sides[0]?.off).toBeCloseTo(besides(1000) - 1.02, 9);
    expect(far.sides[2]?.off).toBeCloseTo(0, 9);
  });

  it('counts the deflection of the rest', () => {
    const { centre, worst } = misfit({ centre: 2048 - 100 });
    expect(centre).toBeCloseTo(100 / (INSIDE + 100), 9);
    expect(worst).toBe(centre);
  });

  it('is known to what the rest is known, and to a count of the gate', () => {
    const rest = { ...makeSubject().report.rest!, u95: { x: 3, y: 4 } };
    expect(misfit({}, { report: { rest } }).u95).toBeCloseTo(Math.hypot(5 / INSIDE, 1 / HALF), 9);
    expect(misfit({}, { report: { rest }, radius: null }).u95).toBeCloseTo(5 / INSIDE, 9);
    const unknown = { ...rest, u95: { x: null, y: 4 } };
    expect(misfit({}, { report: { rest: unknown } }).u95).toBeNull();
  });
});

describe('findStaleMapping', () => {
  it('decides by 3 % and names what is off most', () => {
    const rest = { ...makeSubject().report.rest!, u95: { x: 3, y: 4 } };
    const at = (magnitude: number) => {
      const off = { ...rest, offset: { ...rest.offset, magnitude } };
      return findStaleMapping(makeSubject({ mapping: { x: fit, y: fit }, report: { rest: off } }), defaultLimits)!;
    };
    // U = √(0.00408² + 0.0008²) = 0.00416.
    expect([0.0343, 0.034, 0.026, 0.0257].map((magnitude) => at(magnitude).decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(at(0.05).says).toContain('Under what the pad stores, its rest comes out as 5.0 % of full deflection');
    expect(at(0.05)).toMatchObject({ value: 0.05, limit: 0.03, severity: 'caution' });
  });

  it('says which side falls short or goes further, and shows its directions', () => {
    const at = (max: number) =>
      findStaleMapping(makeSubject({ mapping: { x: { ...fit, max }, y: fit } }), defaultLimits)!;
    expect(at(3548).says).toContain('its reach right falls 18.5 % short');
    expect(at(3048).says).toContain('its reach right goes 22.');
    expect(at(3048).shows.directions).toEqual([0, 5, 10, 15, 20, 25, 335, 340, 345, 350, 355]);
    expect(at(3048).for).toHaveLength(1);
  });
});
