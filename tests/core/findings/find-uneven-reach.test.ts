import { describe, expect, it } from 'vitest';
import { findUnevenReach } from '../../../core/findings/find-uneven-reach.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Outline } from '../../../core/findings/outline/fit-outline.ts';
import type { DirectionMeasure, RimMeasure } from '../../../core/measure/rim-measure.ts';
import type { StickReport } from '../../../core/measure/measure-report.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { makeSubject } from './make-subject.ts';

const base = makeSubject();
const rimOf = (seen: (degrees: number) => Partial<DirectionMeasure>, spread: number | null = 0.005): RimMeasure => ({
  ...base.report.rim!,
  directions: base.report.rim!.directions.map((one) => ({ ...one, ...seen(one.angle) })),
  pooledSpread: spread,
});
const outlineOf = (sides: Outline['sides'], corner = 0, rounding = 0): Outline => ({
  ...base.outline!,
  sides,
  value: { ...base.outline!.value, corner: (corner * Math.PI) / 180, rounding },
});

function find(
  seen: (degrees: number) => Partial<DirectionMeasure>,
  subject: Partial<Subject> = {},
  report: Partial<StickReport> = {},
) {
  const rim = report.rim === undefined ? rimOf(seen) : report.rim;
  return findUnevenReach(makeSubject({ report: { ...report, rim }, subject }), defaultLimits);
}
/** Full output but for some directions. */
const short =
  (angles: readonly number[], by: number) =>
  (degrees: number): Partial<DirectionMeasure> => ({ seen: angles.includes(degrees) ? 1 - by : 1 });
const six = [30, 35, 40, 45, 50, 55];

describe('findUnevenReach', () => {
  it('takes what the sixth-worst direction lacks of full output, known to twice the spread of the turns', () => {
    const found = find((degrees) => ({ seen: six.includes(degrees) ? 0.6 + degrees / 200 : 1 }))!;
    // The least lacking of the six is that at 55°.
    expect(found.value).toBeCloseTo(1 - 0.875, 12);
    expect(found.u95).toBeCloseTo(0.01, 12);
    expect(found).toMatchObject({ limit: 0.06, decision: 'fail', severity: 'caution' });
    expect(found.says).toContain('gives as little as 75 % of full output');
    expect(found.shows.directions).toEqual(six);
  });

  it('decides by 6 %, and by six directions', () => {
    expect([0.071, 0.069, 0.051, 0.049].map((by) => find(short(six, by))?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find(short(six.slice(1), 0.3))).toMatchObject({ decision: 'pass', value: 0 });
  });

  it('leaves the edges of the axes out, to 15° beside them', () => {
    const beside = [345, 350, 355, 0, 5, 10, 80, 85, 90, 95, 100, 170, 190];
    expect(find(short(beside, 0.4))).toMatchObject({ decision: 'pass', value: 0 });
    expect(find(short([15, 75, 105, 165, 195, 345], 0.4))?.value).toBeCloseTo(0.4, 12);
  });

  it('lets a gate with corners expect no more than its shape: its sides where the corners lie along the axes', () => {
    // An eight-sided gate stands at cos 22.5° = 92.4 % in the middle of its sides.
    const gate = (degrees: number) => {
      const from = (degrees % 45) - 22.5;
      return Math.cos(Math.PI / 8) / Math.cos((from * Math.PI) / 180);
    };
    const eight = { outline: outlineOf(8) };
    expect(find((degrees) => ({ seen: gate(degrees) }), eight)?.value).toBeCloseTo(0, 9);
    expect(find((degrees) => ({ seen: gate(degrees) }))?.decision).toBe('fail');
    expect(find((degrees) => ({ seen: 0.9 * gate(degrees) }), eight)?.decision).toBe('fail');
    // With sides across the axes their corners lie beyond full output: no more than that is expected.
    expect(find(() => ({ seen: 1 }), { outline: outlineOf(8, 22.5) })?.value).toBe(0);
    expect(find(short(six, 0.1), { outline: outlineOf(8, 22.5) })?.value).toBeCloseTo(0.1, 12);
  });

  it('cannot say of a gate that was not covered', () => {
    const lacking = short(six, 0.2);
    const open = (wide: number) => (degrees: number) => ({
      ...lacking(degrees),
      covered: Math.abs(degrees - 180) >= wide / 2,
    });
    expect([10, 20].map((wide) => find(open(wide))?.decision)).toEqual(['fail', 'cannot say']);
  });

  it('takes no direction that was not covered', () => {
    const open = (degrees: number) => ({ ...short(six, 0.3)(degrees), covered: degrees !== 40 });
    expect(find(open)).toMatchObject({ value: 0, decision: 'pass' });
    expect(find(() => ({ covered: false }))).toBeNull();
    expect(find(() => ({ seen: null }))).toBeNull();
  });

  it('is absent where no mapping is in force, but for counts that come after that of the pad', () => {
    const range = { mappingFrom: 'range' } as const;
    const rim = rimOf(short(six, 0.3));
    expect(find(short(six, 0.3), {}, { ...range, rim })).toBeNull();
    expect(find(short(six, 0.3), { domain: 'reported' }, { ...range, rim })?.decision).toBe('fail');
    expect(find(short(six, 0.3), { outline: null })).toBeNull();
    expect(find(short(six, 0.3), {}, { rim: null })).toBeNull();
  });
});
