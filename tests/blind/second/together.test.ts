import { describe, expect, it } from 'vitest';
import { demands, type Part } from './demands.ts';
import { notGated, whyNotGated } from './not-gated.ts';
import { shareOf, type Result } from './result.ts';
import { togetherOf } from './together.ts';

/** Of six draws so many named, and so many not kept. */
function cell(part: Part, name: string, pad: string, counts: readonly number[]): Result {
  const shares = demands[part].flatMap(({ demand }, at) => {
    const found = counts[at];
    return found === undefined ? [] : [shareOf({ part, name, pad }, demand, { found, of: 6 })];
  });
  return { part, name, pad, shares };
}

describe('cells together', () => {
  const results = [
    cell('far', 'skew', 'sensor12', [6, 5]),
    cell('far', 'turned', 'sensor12', [5, 6]),
    cell('far', 'trigger-stays', 'sensor12', [6]),
    cell('far', 'skew', 'reported8', [6, 6]),
    cell('sound', 'round', 'sensor12', [0, 6]),
  ];

  it('are counted by kind of pad and by what is asked of them', () => {
    const [only, ...others] = togetherOf(results);
    expect(others).toEqual([]);
    expect([only?.part, only?.name, only?.pad]).toEqual(['far', 'every fault', 'sensor12']);
    expect(only?.shares.map(({ demand, found, of }) => [demand.what, found, of])).toEqual([
      ['named first or second', 17, 18],
      ['not kept', 11, 12],
    ]);
  });

  it('leave out what is not gated, by what was asked', () => {
    const [only] = togetherOf([...results, cell('far', 'slow-return', 'sensor12', [0, 6])]);
    expect(only?.shares.map(({ found, of }) => [found, of])).toEqual([
      [17, 18],
      [17, 18],
    ]);
  });

  it('miss what none of them does alone', () => {
    const cells = Array.from({ length: 20 }, () => cell('far', 'skew', 'reported16', [5, 6]));
    expect(cells.flatMap(({ shares }) => shares).some(({ isMissed }) => isMissed)).toBe(false);
    expect(togetherOf(cells)[0]?.shares.map(({ isMissed }) => isMissed)).toEqual([true, false]);
  });
});

describe('what is not gated', () => {
  const slow = { part: 'far', name: 'slow-return', pad: 'sensor12' } as const;

  it('is known by part, name, pad and what was asked', () => {
    expect(whyNotGated(slow, 'named first or second')).toMatch(/ Reached: \d+ of \d+ named/u);
    expect(whyNotGated(slow, 'not kept')).toBeNull();
    expect(whyNotGated({ ...slow, name: 'skew' }, 'named first or second')).toBeNull();
    expect(whyNotGated({ ...slow, part: 'curve' }, 'named first or second')).toBeNull();
    expect(whyNotGated({ part: 'far', name: 'overshoot', pad: 'reported16' }, 'named first or second')).toBeNull();
  });

  it('is not at 1.5 times either, and not of the gates of its draws', () => {
    expect(whyNotGated({ ...slow, part: 'near' }, 'named first or second')).not.toBeNull();
    expect(
      whyNotGated({ ...slow, name: 'slow-return, round', pad: 'every pad' }, 'named first or second'),
    ).not.toBeNull();
  });

  it('is something that is asked', () => {
    for (const { part, name, of } of notGated) {
      const asked = part === 'curve' ? [] : demands[part].map(({ demand }) => demand.what);
      expect(asked, name).toEqual(expect.arrayContaining([...of]));
    }
  });
});
