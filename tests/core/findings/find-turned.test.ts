import { describe, expect, it } from 'vitest';
import { findTurned } from '../../../core/findings/find-turned.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject, makeTravel } from './make-subject.ts';

const swept = (turnAngle: number) =>
  findTurned(makeSubject({ report: { travel: makeTravel({ turnAngle, turnU95: 2.5 }) } }), defaultLimits);

/** An eight-sided gate whose corners stand so many degrees clockwise of the axes. */
const cornered = (turn: number) => {
  const radius = (degrees: number): number => {
    const from = ((((degrees + turn) % 45) + 45) % 45) - 22.5;
    return Math.cos(Math.PI / 8) / Math.cos((from * Math.PI) / 180);
  };
  return findTurned(makeSubject({ radius }), defaultLimits);
};

describe('findTurned', () => {
  it('decides what sweeps show by 5°', () => {
    expect([7.6, -7.4, 2.6, -2.4].map((angle) => swept(angle)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    const found = swept(-8)!;
    expect(found).toMatchObject({ value: 8, u95: 2.5, limit: 5, severity: 'fault' });
    expect(found.says).toContain('sits turned clockwise by 8.0° ± 2.5°, as sweeps along its axes show');
    expect(swept(8)?.says).toContain('turned counter-clockwise by 8.0°');
  });

  it('takes more than 45° for another axis, not for a turn', () => {
    expect(swept(45)?.value).toBe(45);
    expect([swept(45.1), swept(-45.1)]).toEqual([null, null]);
  });

  it('decides what the corners of a gate show by the same, known to 1.5°', () => {
    expect(cornered(9)?.u95).toBeCloseTo(1.5, 2);
    expect([6.7, -6.3, 3.7, -3.3].map((turn) => cornered(turn)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(cornered(9)?.says).toContain('turned counter-clockwise by 9.0° ± 1.5°, as the corners of its gate show');
    expect(cornered(-9)?.says).toContain('turned clockwise by 9.0°');
  });

  it('says nothing of corners further than 15° from the axes: it may be the next one', () => {
    expect(cornered(14.5)?.value).toBeCloseTo(14.5, 1);
    expect([cornered(15.5), cornered(-15.5)]).toEqual([null, null]);
  });
});
