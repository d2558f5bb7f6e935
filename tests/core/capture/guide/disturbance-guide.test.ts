import { describe, expect, it } from 'vitest';
import { DisturbanceGuide, type Beside } from '../../../../core/capture/guide/disturbance-guide.ts';
import type { Disturbance } from '../../../../core/capture/evidence/disturbance.ts';
import { HandScript, twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 1.5 };

function started(of: Disturbance, dwells = 2) {
  const hand = new HandScript(plan);
  const beside = { clickDown: false, otherTilt: 0 as number | null };
  const guide = new DisturbanceGuide({
    stick: 'left',
    fields: plan.fields,
    startUs: 0,
    of,
    dwells,
    mark: (t, name, detail) => hand.marks.push({ t, name, detail }),
  });
  hand.hear = {
    reading: ({ t, x, y, down }) => {
      const now: Beside = { buttonDown: down || beside.clickDown, ...beside };
      guide.reading(t, { x, y }, now);
    },
    advance: (t) => guide.advance(t),
  };
  const names = (): string[] => hand.marks.map(({ name, detail }) => [name, detail['edge']].join(' ').trim());
  return { hand, guide, beside, names };
}

describe('DisturbanceGuide', () => {
  it('takes releases while it rumbles, as a rest capture does', () => {
    const { hand, guide, names } = started('rumble');
    hand.stay(0.3);
    expect(guide).toMatchObject({ phase: 'waiting', taken: 0, asked: 2 });
    while (!guide.isDone && hand.t < 30e6)
      hand
        .push(guide.toward ?? 0)
        .stay(0.2)
        .letGo()
        .stay(1);
    expect(guide.taken).toBe(2);
    expect(names().filter((name) => name !== 'toward')).toEqual(
      Array<string[]>(2).fill(['release', 'dwell begin', 'dwell end']).flat(),
    );
  });

  it('takes no release while the other stick is not at full tilt, and says so', () => {
    const { hand, guide, beside } = started('other-stick');
    hand.push(0).stay(0.2).letGo().stay(1.5);
    expect(guide.taken).toBe(0);
    expect(guide.prompt).toBe('Hold the right stick at full tilt all the while.');
    beside.otherTilt = 0.6;
    hand.push(0).stay(0.2).letGo().stay(1.5);
    expect(guide.taken).toBe(1);
    expect(guide.prompt).toContain('Push the left stick');
  });

  it('takes one dwell a press with the click held, and none without it', () => {
    const { hand, guide, beside, names } = started('click');
    hand.stay(1.5);
    expect(guide).toMatchObject({ phase: 'waiting', taken: 0, toward: null });
    expect(guide.prompt).toBe('Press the left stick straight down and hold it still.');
    beside.clickDown = true;
    hand.stay(0.3);
    expect(guide.phase).toBe('dwelling');
    hand.stay(3);
    expect(guide.taken).toBe(1);
    expect(guide.prompt).toBe('Let go of the left stick.');
    beside.clickDown = false;
    hand.stay(0.5);
    beside.clickDown = true;
    hand.stay(1.5);
    expect(guide).toMatchObject({ taken: 2, isDone: true });
    expect(names()).toEqual(Array<string[]>(2).fill(['dwell begin', 'dwell end']).flat());
  });

  it('gives a dwell up where the click is let go amid it, and repeats the last', () => {
    const { hand, guide, beside, names } = started('click');
    beside.clickDown = true;
    hand.stay(0.4);
    beside.clickDown = false;
    hand.stay(0.4);
    expect(guide.taken).toBe(0);
    expect(names()).toEqual(['dwell begin']);
    beside.clickDown = true;
    hand.stay(1.5);
    expect(guide.taken).toBe(1);
    guide.repeat(hand.t);
    expect(guide.taken).toBe(0);
    expect(names().at(-1)).toBe('repeat');
  });

  it('says what it waits for where nothing comes', () => {
    const { hand, guide } = started('click');
    hand.stay(7);
    expect(guide.prompt).toContain('No click has come');
  });
});
