import { describe, expect, it } from 'vitest';
import { WarmUpGuide, type TimedRest, type WarmUpJudgement } from '../../../../core/capture/guide/warm-up-guide.ts';
import { HandScript, twelveBits, type StickPlan } from './hand-script.ts';

const plan: StickPlan = { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 1.5 };

function started(judge: (dwells: readonly TimedRest[]) => WarmUpJudgement) {
  const hand = new HandScript(plan);
  const guide = new WarmUpGuide({
    stick: 'left',
    fields: plan.fields,
    startUs: 0,
    judge,
    mark: (t, name, detail) => hand.marks.push({ t, name, detail }),
  });
  hand.hear = {
    reading: ({ t, x, y, down }) => guide.reading(t, x, y, down),
    advance: (t) => guide.advance(t),
  };
  return { hand, guide };
}

/** Drifting until four dwells are there. */
function fourDwells(dwells: readonly TimedRest[]): WarmUpJudgement {
  if (dwells.length < 3) return { drift: null, steady: null };
  return { drift: { x: 0.25, y: -0.1 }, steady: dwells.length >= 4 };
}

describe('WarmUpGuide', () => {
  it('asks for a release every few seconds, says to wait while the rest drifts, and ends once it does not', () => {
    const { hand, guide } = started(fourDwells);
    const said: string[] = [];
    for (let release = 0; !guide.isDone && release < 10; release += 1) {
      expect(guide.toward).not.toBeNull();
      hand
        .push(guide.toward ?? 0)
        .stay(0.2)
        .letGo()
        .stay(1.2);
      said.push(guide.prompt);
      if (guide.dwells.length < 4) expect(guide).toMatchObject({ phase: 'paused', toward: null });
      hand.stay(4.2);
    }
    expect(guide.dwells).toHaveLength(4);
    expect(said[0]).toBe('Wait. 1 release is too few to tell a drift.');
    expect(said[1]).toBe('Wait. 2 releases are too few to tell a drift.');
    expect(said[2]).toBe('Wait: the rest still drifts by 15 counts a minute.');
    const [first] = guide.dwells;
    expect(first?.point.x).toBeCloseTo(2100, 0);
    expect((first?.endUs ?? 0) - (first?.startUs ?? 0)).toBeGreaterThanOrEqual(500_000);
    const towards = hand.marks.filter(({ name }) => name === 'toward').map(({ detail }) => detail['angle']);
    expect(towards.slice(0, 3)).toEqual([0, 180, 90]);
  });

  it('does not take the stick for pushed while it waits, nor a button held for a release', () => {
    const { hand, guide } = started(fourDwells);
    hand.press(true).push(0).stay(0.2).letGo().stay(2);
    expect(guide.dwells).toHaveLength(0);
    hand.press(false).stay(1);
    expect(guide.dwells).toHaveLength(1);
    hand.push(0).stay(0.2).letGo().stay(1);
    expect(guide.dwells).toHaveLength(1);
  });

  it('repeats the last release and waits no longer when told so', () => {
    const { hand, guide } = started(fourDwells);
    hand.push(0).stay(0.2).letGo().stay(1.2);
    guide.repeat(hand.t);
    expect(guide.dwells).toHaveLength(0);
    expect(guide.phase).toBe('waiting');
    guide.confirm();
    expect(guide.isDone).toBe(true);
  });
});
