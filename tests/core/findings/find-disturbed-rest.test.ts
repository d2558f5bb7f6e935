import { describe, expect, it } from 'vitest';
import { findDisturbedRest } from '../../../core/findings/find-disturbed-rest.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { DisturbanceMeasure } from '../../../core/measure/disturbance-measure.ts';
import { makeSubject } from './make-subject.ts';

function shifted(of: string, x: number, y: number, wish: Partial<DisturbanceMeasure> = {}): DisturbanceMeasure {
  return { of, shift: { x, y }, u95: { x: 3, y: 4 }, startUs: 1, endUs: 2, ...wish };
}

function find(...disturbance: readonly DisturbanceMeasure[]) {
  return findDisturbedRest(makeSubject({ report: { disturbance } }), defaultLimits);
}

describe('findDisturbedRest', () => {
  it('takes the largest shift, in shares of the half travel of each axis', () => {
    const found = find(shifted('click', 0, -10, { startUs: 7, endUs: 9 }), shifted('rumble', 30, -40))!;
    expect(found).toMatchObject({ value: 0.04, u95: 0.004, limit: 0.02, decision: 'fail', severity: 'caution' });
    expect(found.says).toBe('With rumble on the rest of the left stick moves by 4.0 % of the half travel.');
    expect(found.shows.spans).toEqual([
      { startUs: 7, endUs: 9 },
      { startUs: 1, endUs: 2 },
    ]);
    expect([found.for, found.against]).toEqual([[], []]);
    const half = { x: 1000, y: 500 };
    const wide = makeSubject({ report: { disturbance: [shifted('shell', 30, 20)] }, subject: { half } });
    expect(findDisturbedRest(wide, defaultLimits)).toMatchObject({ value: 0.05, u95: Math.hypot(0.003, 0.008) });
  });

  it('decides by 2 % of the half travel, 25 counts, and its uncertainty of 5 counts', () => {
    const decided = [31, 29, 21, 19].map((counts) => find(shifted('click', counts, 0))?.decision);
    expect(decided).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
  });

  it('names the others that are beyond the limit, too', () => {
    const found = find(shifted('rumble', 50, 0), shifted('click', 30, 0), shifted('charger', 25, 0));
    expect(found?.for).toEqual(['With the stick clicked in: 2.4 %.']);
  });

  it('says what speaks against a click, what to do of a shell, and the word of the mark where it knows none', () => {
    expect(find(shifted('click', 50, 0))?.against).toHaveLength(1);
    expect(find(shifted('shell', 50, 0))?.next).toContain('Loosen the screws');
    const other = find(shifted('tape on', 50, 0))!;
    expect(other.says).toContain('With tape on the rest');
    expect(other.causes).toHaveLength(1);
  });
});
