import { describe, expect, it } from 'vitest';
import { GuidedHand } from './guided-hand.ts';
import { twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 1.5 };

function started(changes: Partial<StickPlan> = {}, turns = 3) {
  const whole = { ...plan, ...changes };
  const hand = new GuidedHand(whole).stay(0.5);
  return { hand, guide: hand.rimGuide(whole, turns, [{ x: 2100, y: 1990 }]) };
}

describe('RimGuide', () => {
  it('counts turns each way, says which way is next and is done when all is covered', () => {
    const { hand, guide } = started();
    expect(guide.phase).toBe('waiting');
    expect(guide.wanted).toBe('clockwise');
    expect(guide.prompt).toBe('Turn the left stick clockwise along its gate, pressed outward: 3 more turns.');
    hand.push(20).turn(-400);
    expect(guide.phase).toBe('turning');
    expect(guide.turns).toEqual({ clockwise: 1, counterClockwise: 0 });
    expect(guide.underway).toBeLessThan(-30);
    expect(guide.prompt).toMatch(/2 more turns\.$/);
    hand.turn(-700);
    expect(guide.turns).toEqual({ clockwise: 3, counterClockwise: 0 });
    expect(guide.prompt).toMatch(/counter-clockwise .* 3 more turns\.$/);
    expect(guide.isDone).toBe(false);
    hand.turn(1100);
    expect(guide.isDone).toBe(true);
    expect(guide.uncovered).toEqual([]);
    expect(guide.covered[40]).toEqual({ clockwise: 3, counterClockwise: 3 });
    expect(hand.marks.filter(({ name }) => name === 'turn').map(({ detail }) => detail['way'])).toEqual([
      'clockwise',
      'clockwise',
      'clockwise',
      'counterClockwise',
      'counterClockwise',
      'counterClockwise',
    ]);
  });

  it('names the stretches that are not covered and ends on the hand’s word', () => {
    const { hand, guide } = started();
    const slack = (turned: number): number => {
      const at = (((20 + turned) % 360) + 360) % 360;
      return at > 262.5 && at < 282.5 ? 0.7 : 1;
    };
    hand.push(20).turn(-360 - 10);
    hand
      .push(20)
      .turn(-720 - 10, 1.2, slack)
      .letGo()
      .stay(0.3)
      .push(20)
      .turn(1100)
      .letGo()
      .stay(0.3);
    expect(guide.turns).toEqual({ clockwise: 3, counterClockwise: 3 });
    expect(guide.isDone).toBe(false);
    expect(guide.uncovered).toEqual(['265°–280°']);
    expect(guide.wanted).toBe('clockwise');
    expect(guide.prompt).toBe(
      'Not covered yet: 265°–280°. Turn the left stick clockwise along its gate, pressed outward: one more turn. Or confirm to do without.',
    );
    guide.confirm();
    expect(guide.isDone).toBe(true);
    expect(guide.uncovered).toEqual(['265°–280°']);
  });

  it('asks to go on more slowly where a turn passed directions between two reports', () => {
    const { hand, guide } = started({ intervalUs: 8000 });
    hand.push(0).turn(-420, 0.35);
    expect(guide.turns.clockwise).toBe(1);
    expect(guide.prompt).toMatch(/^More slowly: /);
  });

  it('drops the last turn on request', () => {
    const { hand, guide } = started();
    hand.push(0).turn(-2 * 360 - 60);
    guide.repeat(hand.t);
    expect(guide.turns).toEqual({ clockwise: 1, counterClockwise: 0 });
    expect(guide.underway).toBe(0);
    expect(hand.marks.at(-1)).toEqual({ t: hand.t, name: 'repeat', detail: { of: 'turn', stick: 'left' } });
    hand.turn(-2 * 360 - 60);
    expect(guide.turns).toEqual({ clockwise: 3, counterClockwise: 0 });
  });

  it('does not go on over lost reports', () => {
    const { hand, guide } = started();
    hand.push(0).turn(-300).lose(0.2);
    guide.gap();
    hand.turn(-300);
    expect(guide.turns).toEqual({ clockwise: 0, counterClockwise: 0 });
  });

  it('says what is seen where nothing turns', () => {
    const { hand, guide } = started();
    hand.stay(7);
    expect(guide.prompt).toMatch(/^The readings of the left stick do not change: .* Press it outward/);
    hand.push(0, 0.05).stay(0.1).letGo().stay(7);
    hand.push(0).turn(-100).stay(7);
    expect(guide.prompt).toMatch(/^The turn has not gone on for a while\./);
  });

  it('counts about the middle of the fields where no rest is known', () => {
    const hand = new GuidedHand(plan).stay(0.5);
    const guide = hand.rimGuide(plan, 1, []);
    hand.push(0).turn(-420).turn(420);
    expect(guide.turns).toEqual({ clockwise: 1, counterClockwise: 1 });
    expect(guide.isDone).toBe(true);
  });
});
