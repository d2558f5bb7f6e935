import { describe, expect, it } from 'vitest';
import { GuidedHand } from './guided-hand.ts';
import { eightBits, twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 1.5 };

function started(changes: Partial<StickPlan> = {}, flicks = 1) {
  const whole = { ...plan, ...changes };
  const hand = new GuidedHand(whole).stay(0.5);
  return { hand, guide: hand.flickGuide(whole, flicks) };
}

function names(hand: GuidedHand): string[] {
  return hand.marks.filter(({ name }) => name !== 'capture').map(({ name }) => name);
}

describe('FlickGuide', () => {
  it('sees push and let-go by itself, waits until the stick has settled and asks for the next', () => {
    const { hand, guide } = started();
    expect(guide).toMatchObject({ phase: 'waiting', toward: 0 });
    expect(guide.prompt).toContain('Push the left stick right to the edge');
    hand.push(0).stay(0.2);
    expect(guide.phase).toBe('pushing');
    hand.letGo({ x: 0, y: 0 }, 0.03);
    expect(guide.phase).toBe('settling');
    expect(guide.prompt).toBe('Keep off the left stick.');
    hand.stay(0.4);
    expect(guide.phase).toBe('settling');
    hand.stay(0.4);
    expect(guide).toMatchObject({ phase: 'waiting', toward: 180, taken: [0] });
    expect(names(hand)).toEqual(['release']);
    const release = hand.marks.find(({ name }) => name === 'release');
    expect(release?.detail).toEqual({ stick: 'left' });
  });

  for (const [name, changes] of Object.entries({
    'a sensor': {},
    'eight bits that report only changes': {
      fields: eightBits,
      rest: { x: 130, y: 122 },
      gate: () => 118,
      noise: 0,
      onChange: true,
      intervalUs: 8000,
    },
    'a small gate': { gate: () => 900 },
  } satisfies Record<string, Partial<StickPlan>>))
    it(`takes two flicks in each of four directions and is done, with ${name}`, () => {
      const { hand, guide } = started(changes, 2);
      for (let flick = 0; !guide.isDone && flick < 12; flick += 1) hand.flick(guide.toward ?? 0);
      expect(guide.taken).toEqual([0, 180, 90, 270, 0, 180, 90, 270]);
      expect(names(hand)).toEqual(Array<string>(8).fill('release'));
    });

  it('asks again where the stick was led back, not at full tilt, went another way, or a button was down', () => {
    const { hand, guide } = started();
    hand.flick(0, 0.6);
    expect(guide.prompt).toMatch(/^The stick was led back, or returns slowly. Once more: push/u);
    hand.push(0, 0.3).stay(0.2).letGo().stay(1);
    expect(guide.prompt).toContain('not at full tilt');
    hand.push(90).press(true).stay(0.2).press(false).letGo().stay(1);
    expect(guide.prompt).toContain('A button was down');
    expect(guide.taken).toEqual([]);
    hand.flick(0);
    expect(guide.taken).toEqual([0]);
    expect(names(hand)).toEqual(['release', 'repeat', 'release', 'repeat', 'release', 'repeat', 'release']);
  });

  it('asks again where the stick was pushed before it had settled, and takes no stick that is held already', () => {
    const { hand, guide } = started();
    hand.push(0).stay(0.2).letGo({ x: 0, y: 0 }, 0.03).stay(0.2).push(0).stay(0.2);
    expect(guide.prompt).toContain('pushed again before it had settled');
    hand.letGo().stay(1);
    expect(guide.taken).toEqual([]);
    hand.flick(0);
    expect(guide.taken).toEqual([0]);
    expect(names(hand)).toEqual(['release', 'repeat', 'release']);
  });

  it('asks again where reports were lost', () => {
    const { hand, guide } = started();
    hand.push(0).stay(0.1).lose(0.2, null);
    guide.gap();
    hand.stay(0.1).letGo().stay(1);
    expect(guide.prompt).toContain('Reports were lost in that flick');
  });

  it('takes what a stick does every time as its own: a weak spring is measured, not refused', () => {
    const { hand, guide } = started();
    hand.flick(0, 0.4).flick(0, 0.4).flick(0, 0.4);
    expect(guide.taken).toEqual([0]);
    expect(guide.prompt).toContain('Push the left stick left to the edge');
  });

  it('takes swapped axes at their word after three tries', () => {
    const { hand, guide } = started();
    hand.flick(90);
    expect(guide.prompt).toContain('went another way');
    hand.flick(90).flick(90);
    expect(guide.taken).toEqual([0]);
  });

  it('never takes a button held or lost reports as the stick’s own', () => {
    const { hand, guide } = started();
    hand.press(true);
    for (let i = 0; i < 5; i += 1) hand.flick(0);
    expect(guide.taken).toEqual([]);
  });

  it('says that the stick is held, and what is seen where nothing comes', () => {
    const { hand, guide } = started();
    hand.stay(7);
    expect(guide.prompt).toContain('was not moved, or its sensor is dead');
    hand.push(0).stay(7);
    expect(guide.prompt).toContain('The left stick is held.');
    const gone = started();
    gone.guide.advance(gone.hand.t + 7e6);
    expect(gone.guide.prompt).toContain('left stick');
  });

  it('repeats the last flick and is content with one each way when told so', () => {
    const { hand, guide } = started({}, 2);
    hand.flick(0).flick(180).flick(90);
    guide.confirm();
    expect(guide.isDone).toBe(false);
    guide.repeat(hand.t);
    expect(guide).toMatchObject({ taken: [0, 180], toward: 90 });
    hand.flick(90).flick(270);
    guide.confirm();
    expect(guide.isDone).toBe(true);
  });
});
