import { describe, expect, it } from 'vitest';
import { coarserThan, sayRival } from '../../../../core/findings/outline/say-suspect.ts';

describe('how sure a suspect is', () => {
  it('is not said without a rival', () => {
    expect(sayRival(null)).toBe('');
  });

  it('is said in odds to one, the larger number first where it speaks for it', () => {
    expect(sayRival({ is: 'x', odds: 3.14 })).toBe(
      ', with odds of 3.1 to 1 against a short side of x, which looks much the same',
    );
    expect(sayRival({ is: 'seat', odds: 0.2 })).toBe(
      ', with odds of 1 to 5.0 against a seat that is not flat, which looks much the same',
    );
    expect(sayRival({ is: 'y', odds: 1 })).toContain('odds of 1.0 to 1 against a short side of y');
  });

  it('is rounded to whole numbers from ten on, with one digit below', () => {
    const odds = (value: number) => sayRival({ is: 'y', odds: value }).slice(0, 60);
    expect(odds(9.99)).toContain('odds of 10.0 to 1');
    expect(odds(10.4)).toContain('odds of 10 to 1');
    expect(odds(19.6)).toContain('odds of 20 to 1');
    expect(odds(1 / 14)).toContain('odds of 1 to 14');
  });

  it('says how fine the gate lets look only where that is coarser than the limit', () => {
    expect(coarserThan(0.012, 0.012)).toBe('');
    expect(coarserThan(0.0219, 0.018)).toBe('; finer than 2.2 % the gate hides');
  });
});
