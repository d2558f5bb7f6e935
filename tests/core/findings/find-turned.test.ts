import { describe, expect, it } from 'vitest';
import { findTurned } from '../../../core/findings/find-turned.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { PromptedWays } from '../../../core/findings/prompted-ways.ts';
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

  it('goes by prompted pushes where neither sweeps nor corners tell, known to the aim of a hand', () => {
    const pushed = (turn: number, turnU95 = 3, wiring: PromptedWays['wiring'] = 'as it should be') => {
      const prompted = { prompts: 24, astray: 0, agreement: 0.99, wiring, turn, turnU95 };
      return findTurned(makeSubject({ subject: { prompted } }), defaultLimits);
    };
    const found = pushed(-12)!;
    expect(found).toMatchObject({ value: 12, u95: 5, limit: 5, decision: 'fail' });
    expect(found.says).toContain('sits turned clockwise by 12.0° ± 5.0°, as prompted pushes show');
    expect(found.for).toEqual(['Pushes in all directions are off by the same angle in the mean.']);
    // √(3² + 4²) = 5, and 4 alone where all pushes agree.
    expect([10.1, 9.9].map((turn) => pushed(turn)?.decision)).toEqual(['fail', 'cannot say']);
    expect([0.9, 1.1].map((turn) => pushed(turn, 0)?.decision)).toEqual(['pass', 'cannot say']);
    expect(pushed(9.9)?.next).toBe('Sweep once more along a straight edge.');
    expect(pushed(12, 3, 'swapped')).toBeNull();
    expect(findTurned(makeSubject(), defaultLimits)).toBeNull();
  });

  it('believes sweeps before corners, and corners before pushes', () => {
    const prompted = {
      prompts: 24,
      astray: 0,
      agreement: 0.99,
      wiring: 'as it should be',
      turn: 12,
      turnU95: 3,
    } as const;
    const travel = makeTravel({ turnAngle: 8, turnU95: 2.5 });
    expect(findTurned(makeSubject({ report: { travel }, subject: { prompted } }), defaultLimits)?.value).toBe(8);
    const radius = (degrees: number): number => {
      const from = (((degrees + 9) % 45) + 45) % 45;
      return Math.cos(Math.PI / 8) / Math.cos(((from - 22.5) * Math.PI) / 180);
    };
    expect(findTurned(makeSubject({ radius, subject: { prompted } }), defaultLimits)?.value).toBeCloseTo(9, 1);
  });
});
