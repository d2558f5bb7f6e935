import { describe, expect, it } from 'vitest';
import { findSkewed } from '../../../core/findings/find-skewed.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Outline } from '../../../core/findings/outline/fit-outline.ts';
import { makeSubject, makeTravel, skewedGate } from './make-subject.ts';

const base = makeSubject().outline!;
/** A lean of half of so many degrees on either axis, known to σ of the lean. */
const outlineOf = (skew: number, sigma: number, sides: Outline['sides'] = 0): Outline => ({
  ...base,
  sides,
  value: { ...base.value, lean: Math.tan((skew * Math.PI) / 360) },
  variance: ({ lean = 0 }) => (lean * sigma) ** 2,
});
const find = (skew: number, sigma = 0.003, sides: Outline['sides'] = 0) =>
  findSkewed(makeSubject({ subject: { outline: outlineOf(skew, sigma, sides) } }), defaultLimits)!;

describe('findSkewed', () => {
  it('takes twice the angle of the lean, with four times its σ in degrees', () => {
    const found = find(6);
    expect(found.value).toBeCloseTo(6, 9);
    expect(found.u95).toBeCloseTo((4 * 0.003 * 180) / Math.PI, 9);
    expect(found).toMatchObject({ limit: 3.5, decision: 'fail', severity: 'fault' });
    expect(found.says).toBe('The axes of the left stick are 6.0° ± 0.7° from square: the gate comes out slanted.');
  });

  it('decides by 3.5°, whichever way they lean', () => {
    for (const way of [1, -1])
      expect([4.2, 4.18, 2.82, 2.8].map((skew) => find(way * skew).decision)).toEqual([
        'fail',
        'cannot say',
        'cannot say',
        'pass',
      ]);
    expect(find(4.2, 0.004).decision).toBe('cannot say');
  });

  it('shows the diagonal that the outline is drawn out along', () => {
    expect(find(6).shows.directions).toEqual([45, 225]);
    expect(find(-6)).toMatchObject({ shows: { directions: [135, 315] } });
    expect(find(-6).value).toBeCloseTo(6, 9);
    expect(find(6).for[0]).toBe('The outline is drawn out toward 45° and 225°, as leaning axes do.');
  });

  it('says what sweeps along the axes show, but not of axes that are swapped', () => {
    const swept = (skewAngle: number | null) =>
      findSkewed(
        makeSubject({ radius: skewedGate(6), report: { travel: makeTravel({ skewAngle }) } }),
        defaultLimits,
      )?.for.slice(1);
    expect(swept(-5.4)).toEqual(['Sweeps along the axes are 5.4° from square.']);
    expect([swept(44.9)?.length, swept(45)?.length, swept(null)?.length]).toEqual([1, 0, 0]);
  });

  it('names a gate with corners that is worn, and is absent without an outline', () => {
    expect(find(6, 0.003, 8).against).toEqual(['A gate with corners that is worn at two of them looks much the same.']);
    expect(find(6).against).toEqual([]);
    expect(findSkewed(makeSubject({ subject: { outline: null } }), defaultLimits)).toBeNull();
  });
});
