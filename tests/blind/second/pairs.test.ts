import { describe, expect, it } from 'vitest';
import { Chance } from './chance.ts';
import { faultNames } from './faults.ts';
import { namesFor } from './names.ts';
import { choosePairs, pairsOf } from './pairs.ts';

const keyOf = (pair: readonly string[]): string => pair.toSorted((a, b) => a.localeCompare(b)).join(' and ');
const keys = (domain: 'sensor' | 'reported'): string[] => pairsOf(faultNames, domain).map(keyOf);

describe('pairs of faults', () => {
  it('are of two different faults, each pair once, and take in every fault', () => {
    for (const domain of ['sensor', 'reported'] as const) {
      const pairs = pairsOf(faultNames, domain);
      expect(pairs.every(([one, other]) => one !== other)).toBe(true);
      expect(new Set(keys(domain)).size).toBe(pairs.length);
      expect(new Set(pairs.flat())).toEqual(new Set(faultNames));
    }
  });

  it('leave out what excludes or hides each other, in whatever order they are named', () => {
    for (const pair of [
      'slow-return and overshoot',
      'firmware-band and two-rests',
      'trigger-dead and trigger-stays',
      'inverted-axis and swapped-axes',
    ].map((text) => keyOf(text.split(' and '))))
      expect(keys('reported')).not.toContain(pair);
    expect(keys('sensor')).toContain(keyOf(['skew', 'two-rests']));
  });

  it('never share a name, so that one finding does not do for both', () => {
    for (const domain of ['sensor', 'reported'] as const)
      for (const [one, other] of pairsOf(faultNames, domain)) {
        const names = namesFor(one, { domain });
        expect(
          namesFor(other, { domain }).filter((name) => names.includes(name)),
          `${one}, ${other}`,
        ).toEqual([]);
      }
    expect(keys('sensor')).toContain(keyOf(['off-centre-part', 'stale-numbers']));
    expect(keys('reported')).not.toContain(keyOf(['off-centre-part', 'stale-numbers']));
  });

  it('come of the faults that are known alone', () => {
    expect(pairsOf(['skew', 'noise', 'overshoot'], 'sensor').map(keyOf)).toEqual(
      [
        ['skew', 'noise'],
        ['skew', 'overshoot'],
        ['noise', 'overshoot'],
      ].map(keyOf),
    );
  });

  it('are chosen in an order that the seed decides, none twice before all were', () => {
    const pairs = pairsOf(['skew', 'noise', 'overshoot', 'turned'], 'sensor');
    const chosen = choosePairs(pairs, 2 * pairs.length, new Chance(3, 'pairs'));
    expect(new Set(chosen.slice(0, pairs.length).map(keyOf)).size).toBe(pairs.length);
    expect(new Set(chosen.slice(pairs.length).map(keyOf)).size).toBe(pairs.length);
    expect(choosePairs(pairs, 4, new Chance(3, 'pairs'))).toEqual(chosen.slice(0, 4));
    expect(choosePairs(pairs, 6, new Chance(4, 'pairs'))).not.toEqual(chosen.slice(0, 6));
    expect(choosePairs([], 3, new Chance(3, 'pairs'))).toEqual([]);
  });
});
