import { describe, expect, it } from 'vitest';
import { cellsOf } from './cells.ts';
import { faultNames } from './faults.ts';

describe('the cells of the second blind test', () => {
  it('hold every fault on every pad, but a band of the firmware where the counts come before it', () => {
    const cells = cellsOf(1, 2, ['sensor12', 'reported8']);
    for (const name of faultNames) {
      const pads = cells.filter(({ wishes }) => wishes[0]?.fault?.name === name).map(({ pad }) => pad);
      expect([...new Set(pads)], name).toEqual(name === 'firmware-band' ? ['reported8'] : ['sensor12', 'reported8']);
    }
  });

  it('draw the same whatever else is run, and never the same stick twice', () => {
    const seedsOf = (pads: Parameters<typeof cellsOf>[2], seed = 1): number[] =>
      cellsOf(seed, 5, pads)
        .filter(({ pad }) => pad === 'reported8')
        .flatMap(({ wishes }) => wishes.map((wish) => wish.seed));
    const seeds = seedsOf(['reported8']);
    expect(seedsOf(['sensor12', 'reported8', 'reported16'])).toEqual(seeds);
    expect(new Set(seeds).size).toBe(seeds.length);
    expect(seedsOf(['reported8'], 2)).not.toEqual(seeds);
  });
});
