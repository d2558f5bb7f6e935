import { describe, expect, it } from 'vitest';
import { findSeat } from '../../../core/findings/find-seat.ts';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { findRestMissing, findRimUncovered, isRimWhole } from '../../../core/findings/find-missing.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject, shiftedGate, shortGate } from './make-subject.ts';

describe('findRestMissing', () => {
  const find = (releases: number) => findRestMissing(makeSubject({ releases }), defaultLimits);

  it('is said below twelve releases', () => {
    expect(find(12)).toBeNull();
    expect(find(11)).toMatchObject({ value: 11, limit: 12, u95: 0, decision: 'cannot say', severity: 'caution' });
  });

  it('counts them in words', () => {
    expect([0, 1, 2].map((releases) => find(releases)?.says.split(' measured')[0])).toEqual([
      'No settled release of the left stick was',
      'One settled release of the left stick was',
      '2 settled releases of the left stick were',
    ]);
  });

  it('passes on what the log lacks', () => {
    const lacks = [{ code: 'no-rest', says: 'Nothing settled.' }];
    const found = findRestMissing(makeSubject({ releases: 0, report: { lacks } }), defaultLimits);
    expect(found?.for).toEqual(['Nothing settled.']);
  });
});

describe('findRimUncovered', () => {
  const open = (isOpen: (degrees: number) => boolean) =>
    findRimUncovered(makeSubject({ radius: (degrees) => (isOpen(degrees) ? null : 1) }), defaultLimits);

  it('lets a gap of 10° go and says one of 15°', () => {
    expect(open((degrees) => degrees === 90 || degrees === 95)).toBeNull();
    const found = open((degrees) => degrees >= 90 && degrees <= 100)!;
    expect(found).toMatchObject({ value: 15, limit: 10, decision: 'cannot say', severity: 'caution' });
    expect(found.says).toContain('in 90° to 100°; nothing');
    expect(found.shows.directions).toEqual([90, 95, 100]);
  });

  it('names six stretches and counts the others', () => {
    const found = open((degrees) => degrees <= 10 || (degrees >= 30 && degrees % 30 === 0 && degrees <= 210))!;
    expect(found.says).toContain('in 0° to 10°, 30°, 60°, 90°, 120°, 150° and 2 more stretches;');
  });

  it('is all around without a rim', () => {
    const found = findRimUncovered(makeSubject({ radius: null }), defaultLimits)!;
    expect(found).toMatchObject({ value: 360 });
    expect(found.says).toContain('in any direction');
  });
});

describe('what the outline of the gate alone tells of', () => {
  const SHIFTED = shiftedGate(0.1);
  const SHORT = shortGate(0.1);
  /** `wide` degrees about the left are open. */
  const subjectOf = (radius: (at: number) => number, wide: number) =>
    makeSubject({ radius: (at) => (Math.abs(at - 180) < wide / 2 ? null : radius(at)) });

  it('is told of a gate that was covered, but for ten degrees, and not of one that was not', () => {
    for (const [find, radius] of [
      [findSeat, SHIFTED],
      [findShortRange, SHORT],
    ] as const) {
      const decisions = [0, 10, 20].map((wide) => find(subjectOf(radius, wide), defaultLimits)?.decision);
      expect(decisions).toEqual(['fail', 'fail', 'cannot say']);
    }
    expect([0, 10, 20].map((wide) => isRimWhole(subjectOf(SHORT, wide), defaultLimits))).toEqual([true, true, false]);
  });
});
