import { describe, expect, it } from 'vitest';
import { GuidedHand } from './guided-hand.ts';
import { eightBits, twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 2 };

function started(changes: Partial<StickPlan> = {}, sweeps = 1) {
  const whole = { ...plan, ...changes };
  const hand = new GuidedHand(whole).stay(0.5);
  return { hand, guide: hand.travelGuide(whole, sweeps) };
}

function marks(hand: GuidedHand): string[] {
  return hand.marks
    .filter(({ name }) => name === 'toward' || name === 'repeat')
    .map(({ name, detail }) =>
      name === 'toward' ? `toward ${String(detail['angle'])}` : `repeat ${String(detail['of'])}`,
    );
}

describe('TravelGuide', () => {
  it('sees the stick at the start, under way and at the end, and takes the sweep by itself', () => {
    const { hand, guide } = started();
    expect(guide).toMatchObject({ phase: 'waiting', toward: 0, along: null });
    expect(guide.prompt).toContain('Push the left stick left to the edge');
    hand.push(180, 1, 0.3).stay(0.3);
    expect(guide.phase).toBe('standing');
    expect(guide.along).toBeCloseTo(-1, 1);
    hand.push(0, 0, 1.5);
    expect(guide.phase).toBe('sweeping');
    expect(guide.along).toBeCloseTo(0, 1);
    hand.push(0, 1, 1.5).stay(0.3);
    expect(guide).toMatchObject({ phase: 'waiting', toward: 90, taken: [0] });
    expect(marks(hand)).toEqual(['toward 0']);
    const [mark] = hand.marks;
    expect(mark?.detail).toEqual({ stick: 'left', angle: 0 });
    // The mark stands before the stick has left the gate that the sweep starts from.
    const at = hand.readings.find(({ t }) => t >= (mark?.t ?? 0));
    expect(at?.x).toBeLessThan(2100 - 1390);
  });

  for (const [name, changes] of Object.entries({
    'a sensor': {},
    'eight bits that report only changes': {
      fields: eightBits,
      rest: { x: 130, y: 122 },
      gate: () => 118,
      noise: 0,
      onChange: true,
    },
    'a small gate off centre': {
      rest: { x: 1700, y: 2400 },
      gate: (degrees: number) => 800 + 150 * Math.cos((degrees * Math.PI) / 180),
    },
    'readings every 8 ms': { intervalUs: 8000 },
  } satisfies Record<string, Partial<StickPlan>>))
    it(`asks for two sweeps toward each direction and is done, with ${name}`, () => {
      const { hand, guide } = started(changes, 2);
      hand.stay(0.5);
      for (let sweep = 0; !guide.isDone && sweep < 12; sweep += 1) hand.sweep(guide.toward ?? 0);
      expect(guide.taken).toEqual([0, 90, 180, 270, 0, 90, 180, 270]);
      expect(marks(hand)).toEqual(guide.taken.map((toward) => `toward ${toward}`));
      expect(guide.prompt).toBe('All sweeps of the left stick are taken.');
    });

  it('asks again for a sweep that was too fast, stopped half-way, turned back or left the line', () => {
    const { hand, guide } = started();
    hand.push(180, 1, 0.3).stay(0.3).push(0, 1, 0.6).stay(0.5);
    expect(guide.prompt).toMatch(/^More slowly: that sweep was too fast. Once more: push/u);
    hand.push(180, 1, 0.3).stay(0.3).push(180, 0.1, 1.5).stay(1);
    expect(guide.prompt).toContain('stopped half-way');
    hand.push(180, 1, 0.3).stay(0.3).push(0, 0.1, 1.5).push(180, 0.6, 0.8);
    expect(guide.prompt).toContain('turned back');
    hand.push(180, 1, 0.3).stay(0.3).push(100, 0.8, 1.5);
    expect(guide.prompt).toContain('left the straight line');
    expect(guide.taken).toEqual([]);
    hand.letGo().stay(0.3).sweep(0);
    expect(guide.taken).toEqual([0]);
    expect(marks(hand)).toEqual([...Array<string[]>(4).fill(['toward 0', 'repeat sweep']).flat(), 'toward 0']);
  });

  it('asks again where a button was down or reports were lost on the way', () => {
    const { hand, guide } = started();
    hand.push(180, 1, 0.3).stay(0.3).push(0, 0, 1.5).press(true).push(0, 1, 1.5).press(false).letGo().stay(0.3);
    expect(guide.prompt).toContain('A button was down in that sweep');
    hand.push(180, 1, 0.3).stay(0.3).push(0, 0, 1.5).lose(0.2, 30);
    guide.gap();
    hand.push(0, 1, 1.5).stay(0.3).letGo().stay(0.3);
    expect(guide.prompt).toContain('Reports were lost');
    expect(guide.taken).toEqual([]);
  });

  it('lets a stick go between two sweeps without taking that for one', () => {
    const { hand, guide } = started();
    for (const toward of [0, 90, 180, 270]) hand.sweep(toward);
    expect(guide.taken).toEqual([0, 90, 180, 270]);
    expect(marks(hand).filter((mark) => mark.startsWith('repeat'))).toEqual([]);
  });

  it('says where a stick stands that was pushed elsewhere, and takes one that is held there at its word', () => {
    const { hand, guide } = started();
    hand.push(90, 1, 0.3).stay(1);
    expect(guide.phase).toBe('waiting');
    expect(guide.prompt).toBe('By its readings the left stick stands up. Push it left; if you do, hold it there.');
    hand.stay(2.5);
    expect(guide.phase).toBe('standing');
    hand.push(270, 1, 3).stay(0.3);
    expect(guide.taken).toEqual([0]);
  });

  it('wants the whole way once it knows the gate', () => {
    const { hand, guide } = started({}, 2);
    for (const toward of [0, 90, 180, 270]) hand.sweep(toward);
    hand.push(180, 0.5, 0.3).stay(1);
    expect(guide.phase).toBe('waiting');
    hand.push(180, 1, 0.2).stay(0.3).push(0, 0.6, 2.5).stay(1);
    expect(guide.prompt).toContain('stopped half-way');
  });

  it('repeats the last sweep and is content with one toward each direction when told so', () => {
    const { hand, guide } = started({}, 2);
    guide.confirm();
    expect(guide.isDone).toBe(false);
    hand.sweep(0);
    guide.repeat(hand.t);
    expect(guide).toMatchObject({ taken: [], toward: 0 });
    for (const toward of [0, 90, 180, 270]) hand.sweep(toward);
    guide.confirm();
    expect(guide.isDone).toBe(true);
  });

  it('says what it sees where nothing is done, and of a pad that has gone', () => {
    const { hand, guide } = started();
    hand.stay(7);
    expect(guide.prompt).toContain('was not moved, or its sensor is dead');
    const gone = started({ onChange: true, noise: 0 });
    gone.guide.advance(gone.hand.t + 7e6);
    expect(gone.guide.prompt).toContain('the pad has gone silent');
  });

  it('does not take noise, or a leap of a worn track, for a sweep', () => {
    const { hand, guide } = started({ noise: 60 });
    hand.stay(5);
    expect(guide.phase).toBe('waiting');
    hand.sweep(0);
    expect(guide.taken).toEqual([]);
    const leaping = started();
    leaping.hand.push(180, 1, 0.3).stay(0.3);
    for (let part = 0; part < 10; part += 1) {
      leaping.hand.push(0, -0.9 + 0.2 * part, 0.3);
      leaping.guide.reading(leaping.hand.t + 1000, 0, 1990, false);
    }
    leaping.hand.push(0, 1, 0.1).stay(0.4);
    expect(leaping.guide.taken).toEqual([0]);
  });
});
