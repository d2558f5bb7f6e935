import { describe, expect, it } from 'vitest';
import { missingSentences, uncoveredText } from '../../../renderer/workbench/missing.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';
import { oneRelease, standUnder, wholeStick } from '../support/bench-stick.ts';

describe('missingSentences', () => {
  it('says nothing of a whole survey', () => {
    expect(missingSentences(wholeStick())).toEqual([]);
  });

  it('names a missing rim and a missing rest with what to do', () => {
    const [rim, rest] = missingSentences(makeEvidence({}));
    expect(rim).toContain('Survey the rim');
    expect(rest).toContain('Survey the rest');
  });

  it('lets the capture say why nothing is there, and what moved, without a second sentence for the same', () => {
    const lacks = [
      { code: 'stick-never-moved', says: 'The left stick was never pushed in this log.' },
      { code: 'rest-shifted', says: 'The left stick stood at 120, 130 and later at 90, 130 without a push between.' },
    ];
    expect(missingSentences({ ...makeEvidence({}), lacks })).toEqual(lacks.map(({ says }) => says));
    expect(missingSentences({ ...wholeStick(), lacks: lacks.slice(1) })).toEqual([lacks[1]?.says]);
  });

  it('tells one release from few', () => {
    expect(missingSentences(oneRelease())[0]).toMatch(/^One release only/);
    const dwells = Array.from({ length: 5 }, () => ({ point: { x: 2000, y: 2000 } }));
    expect(missingSentences(makeEvidence({ dwells, turns: sixTurns(() => 900) }))[0]).toMatch(/^5 releases only/);
  });

  it('notices a gate that was turned one way only', () => {
    const turns = [{ way: 'clockwise', radius: () => 900 } as const];
    expect(missingSentences(makeEvidence({ turns }))[0]).toContain('one way only');
  });

  it('says when captures were inferred', () => {
    expect(missingSentences({ ...wholeStick(), captures: 'inferred' })).toEqual([expect.stringContaining('inferred')]);
  });
});

describe('uncoveredText', () => {
  it('names the stretches that were not covered', () => {
    expect(uncoveredText(standUnder(oneRelease()).rim)).toBe('not covered: 100–110°');
  });

  it('names few turns apart from none', () => {
    const turns = sixTurns(() => 900).map((turn, index) => ({
      ...turn,
      radius: (degrees: number) => (degrees === 90 || (degrees === 200 && index > 2) ? null : 900),
    }));
    const { rim } = standUnder(makeEvidence({ turns }));
    expect(uncoveredText(rim)).toBe('not covered: 90° · few turns: 200°');
  });

  it('is empty for a whole gate and without a rim', () => {
    expect([uncoveredText(standUnder(wholeStick()).rim), uncoveredText(null)]).toEqual(['', '']);
  });
});
