import { describe, expect, it } from 'vitest';
import { GuidedHand } from './guided-hand.ts';
import { eightBits, twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 1.5 };

function started(changes: Partial<StickPlan> = {}, releases = 4) {
  const whole = { ...plan, ...changes };
  const hand = new GuidedHand(whole).stay(0.5);
  return { hand, guide: hand.restGuide(whole, releases) };
}

function names(hand: GuidedHand): string[] {
  return hand.marks.map(({ name, detail }) => (name === 'dwell' ? `dwell ${String(detail['edge'])}` : name));
}

describe('RestGuide', () => {
  it('sees push, release, settling and dwell by itself and takes the release', () => {
    const { hand, guide } = started();
    expect(guide.phase).toBe('waiting');
    expect(guide.toward).toBe(0);
    expect(guide.prompt).toBe('Push the left stick right as far as it goes, then let it snap back.');
    hand.stay(0.3).push(0).stay(0.2);
    expect(guide.phase).toBe('pushing');
    hand.letGo();
    expect(guide.phase).toBe('settling');
    hand.stay(0.4);
    expect(guide.phase).toBe('dwelling');
    expect(guide.prompt).toBe('Keep off the left stick.');
    hand.stay(0.5);
    expect(guide.phase).toBe('waiting');
    expect(guide.toward).toBe(180);
    expect(guide.rests).toHaveLength(1);
    expect(guide.rests[0]?.x).toBeCloseTo(2100, 0);
    expect(names(hand)).toEqual(['toward', 'release', 'dwell begin', 'dwell end', 'toward']);
  });

  it('asks for 24 releases from spread directions and is done, hands-free', () => {
    const { hand, guide } = started({}, 24);
    const asked: number[] = [];
    while (!guide.isDone && asked.length < 30) {
      asked.push(guide.toward ?? -1);
      hand.release(guide);
    }
    expect(asked.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 24 }, (_, i) => 15 * i));
    expect(guide.rests).toHaveLength(24);
    expect(guide.toward).toBeNull();
    expect(guide.prompt).toBe('All releases of the left stick are taken.');
  });

  it('takes a release of a pad that reports only changes', () => {
    const { hand, guide } = started({ onChange: true, noise: 0 });
    hand.release(guide).release(guide);
    expect(guide.rests).toHaveLength(2);
  });

  it('does not take a stick that is held at a tilt, however still', () => {
    const { hand, guide } = started();
    hand.push(0).stay(3);
    expect(guide.rests).toHaveLength(0);
    hand.push(0, 0.7).stay(3);
    expect(guide.rests).toHaveLength(0);
  });

  it('does not dwell while a button is down, and says so after a while', () => {
    const { hand, guide } = started();
    hand.push(0).stay(0.2).press(true).letGo().stay(8);
    expect(guide.rests).toHaveLength(0);
    expect(guide.prompt).toMatch(/button is down/);
    hand.press(false).stay(1);
    expect(guide.rests).toHaveLength(1);
  });

  it('gives a dwell up when the stick is touched, and takes the next', () => {
    const { hand, guide } = started();
    hand.push(0).stay(0.2).letGo().stay(0.5).letGo({ x: 60, y: 0 }, 0.02).stay(0.05);
    expect(guide.rests).toHaveLength(0);
    hand.letGo({ x: 0, y: 0 }, 0.02).stay(1);
    expect(guide.rests).toHaveLength(1);
    expect(names(hand).filter((name) => name.startsWith('dwell'))).toEqual(['dwell begin', 'dwell begin', 'dwell end']);
  });

  it('takes a release from another direction than asked', () => {
    const { hand, guide } = started();
    hand.push(120).stay(0.2).letGo().stay(1);
    expect(guide.rests).toHaveLength(1);
  });

  it('takes releases of a stick that rests far off the middle, and of one with a short range', () => {
    for (const changes of [{ rest: { x: 2700, y: 1500 }, gate: () => 1000 }, { gate: () => 600 }]) {
      const { hand, guide } = started(changes);
      hand.release(guide).release(guide).release(guide);
      expect(guide.rests).toHaveLength(3);
    }
  });

  it('drops the last release on request and asks for its direction again', () => {
    const { hand, guide } = started();
    hand.release(guide).release(guide);
    expect(guide.toward).toBe(90);
    guide.repeat(hand.t);
    expect(guide.rests).toHaveLength(1);
    expect(guide.toward).toBe(180);
    expect(hand.marks.at(-2)).toEqual({ t: hand.t, name: 'repeat', detail: { of: 'release', stick: 'left' } });
    hand.release(guide).release(guide).release(guide);
    expect(guide.isDone).toBe(true);
    expect(guide.rests).toHaveLength(4);
  });

  it('asks for the present direction again where nothing was taken yet', () => {
    const { hand, guide } = started();
    hand.push(0).stay(0.1);
    guide.repeat(hand.t);
    expect(guide.toward).toBe(0);
    expect(names(hand)).not.toContain('repeat');
  });

  it('no longer asks for a direction that was skipped', () => {
    const { hand, guide } = started();
    guide.skip(hand.t);
    expect(guide.toward).toBe(180);
    expect(guide.asked).toBe(3);
    hand.release(guide).release(guide).release(guide);
    expect(guide.isDone).toBe(true);
  });

  it('says plainly what is seen of a pad that never moves', () => {
    const { hand, guide } = started();
    hand.stay(7);
    expect(guide.prompt).toMatch(/^The readings of the left stick do not change: .* Push the left stick right/);
    const prompt = guide.prompt;
    hand.stay(7);
    expect(guide.prompt).toBe(prompt);
  });

  it('says of a silent pad that nothing comes, and of a small movement how small it is', () => {
    const silent = started({ onChange: true, noise: 0 });
    silent.hand.stay(7);
    expect(silent.guide.prompt).toMatch(/^Nothing comes from the left stick/);
    const timid = started();
    timid.hand.push(0, 0.1).stay(0.2).letGo().stay(7);
    expect(timid.guide.prompt).toMatch(/moved by [34] % of its range, which is too little/);
  });

  it('says how far a stick that never settles still moves', () => {
    const { hand, guide } = started({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 110, noise: 0 });
    hand.push(0).stay(0.2).letGo({ x: 8, y: 0 });
    for (let i = 0; i < 40; i += 1) hand.letGo({ x: i % 2 === 0 ? -8 : 8, y: 0 }, 0.2);
    expect(guide.rests).toHaveLength(0);
    expect(guide.prompt).toMatch(
      /^The stick does not settle: in a tenth of a second x moves by \d+(\.\d)? counts, where 1\.0 is still\./,
    );
  });

  it('says that a stick is still held', () => {
    const { hand, guide } = started();
    hand.push(0).stay(8);
    expect(guide.prompt).toBe('The left stick is held. Let it snap back and keep off it.');
  });
});
