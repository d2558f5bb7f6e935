import { describe, expect, it } from 'vitest';
import { createChance } from '../../../core/simulate/chance.ts';
import { Switches } from '../../../core/simulate/switches.ts';

/** States of the contacts each millisecond while button 3 is pressed from 10 to 60 ms. */
function pressedOnce(switches: Switches): number[] {
  return Array.from({ length: 100 }, (_, ms) => switches.pass(0.001, ms >= 10 && ms < 60 ? 0b100 : 0));
}

function changesOf(states: readonly number[]): number {
  return states.filter((state, i) => i > 0 && state !== states[i - 1]).length;
}

describe('the contacts of the buttons', () => {
  it('follow at once where they are sound', () => {
    expect(changesOf(pressedOnce(new Switches([], createChance(1, 1))))).toBe(2);
  });

  it('open and close again for as long as they bounce, and then stay', () => {
    const states = pressedOnce(new Switches([{ button: 3, bounceSeconds: 0.02 }], createChance(1, 1)));
    expect(changesOf(states)).toBeGreaterThan(6);
    expect(states.slice(31, 60).every((state) => state === 0b100)).toBe(true);
    expect(states.slice(81).every((state) => state === 0)).toBe(true);
  });

  it('fail open or closed whatever is pressed', () => {
    const open = pressedOnce(new Switches([{ button: 3, bounceSeconds: 0, fails: 'open' }], createChance(1, 1)));
    expect(new Set(open)).toEqual(new Set([0]));
    const closed = pressedOnce(new Switches([{ button: 3, bounceSeconds: 0, fails: 'closed' }], createChance(1, 1)));
    expect(new Set(closed)).toEqual(new Set([0b100]));
  });
});
