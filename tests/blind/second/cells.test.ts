import { describe, expect, it } from 'vitest';
import { faultCell, pairCell, slipCells, soundCells, type Cell } from './cells.ts';
import { faultNames } from './faults.ts';
import { padKinds, type PadKind } from './pad-plan.ts';
import { groupsOf, type Plan } from './plan.ts';

const plan: Plan = { seed: 1, pads: ['sensor12', 'reported8'], units: () => 3, isAsked: () => true };
const sizeOf = (): number => 4;

function seedsOf(cells: readonly Cell[]): number[] {
  return cells.flatMap(({ wishes }) => wishes.map(({ seed }) => seed));
}

describe('the cells of the second blind test', () => {
  it('hold every fault on every pad, but a band of the firmware where the counts come before it', () => {
    const cells = groupsOf(plan, sizeOf).flat();
    for (const fault of faultNames) {
      const pads = cells.filter(({ name, part }) => name === fault && part !== 'pair').map(({ pad }) => pad);
      expect([...new Set(pads)], fault).toEqual(fault === 'firmware-band' ? ['reported8'] : ['sensor12', 'reported8']);
    }
  });

  it('leave out a fault whose size is not known, and what is not asked for', () => {
    const names = (cells: readonly Cell[][]): string[] => [...new Set(cells.flat().map(({ name }) => name))];
    const unseen = groupsOf(plan, (_, name) => (name === 'skew' ? null : 4));
    expect(names(unseen)).not.toContain('skew');
    expect(
      unseen.flat().flatMap(({ wishes }) => wishes.flatMap(({ faults }) => faults.map(({ name }) => name))),
    ).not.toContain('skew');
    expect(names(groupsOf({ ...plan, isAsked: (name) => name === 'noise' }, sizeOf))).toEqual(['noise']);
    expect(names(groupsOf({ ...plan, units: (part) => (part === 'near' ? 2 : 0) }, sizeOf))).toContain('skew');
  });

  it('draw 2 to 4 times the size that is seen half of the time, 1.5 times, and faults without degrees whole', () => {
    const far = faultCell('far', { name: 'skew', pad: 'sensor12' }, 5, 1, 200).wishes.map(
      ({ faults }) => faults[0]?.size ?? 0,
    );
    expect(Math.min(...far)).toBeGreaterThanOrEqual(10);
    expect(Math.max(...far)).toBeLessThanOrEqual(20);
    expect(Math.min(...far)).toBeLessThan(10.5);
    expect(Math.max(...far)).toBeGreaterThan(19);
    expect(faultCell('near', { name: 'skew', pad: 'sensor12' }, 5, 1, 1).wishes[0]?.faults).toEqual([
      { name: 'skew', size: 7.5 },
    ]);
    const whole = faultCell('far', { name: 'swapped-axes', pad: 'sensor12' }, 1, 1, 1);
    expect([whole.part, whole.wishes[0]?.faults]).toEqual(['whole', [{ name: 'swapped-axes', size: 1 }]]);
  });

  it('draw two faults at 3 times their sizes', () => {
    const { wishes } = pairCell('reported16', (_, name) => (name === 'trigger-dead' ? 1 : 4), 1, 40);
    const sizes = wishes.flatMap(({ faults }) => faults);
    expect(wishes.every(({ faults }) => faults.length === 2)).toBe(true);
    expect(
      new Set(sizes.map(({ name, size }) => `${name === 'noise' || size === 1 ? name : 'graded'} ${size}`)),
    ).toContain('graded 12');
    expect(sizes.filter(({ size }) => size !== 12).map(({ name }) => name)).toSatisfy((names: string[]) =>
      names.every((name) => ['inverted-axis', 'swapped-axes', 'trigger-dead'].includes(name)),
    );
  });

  it('draw the same whatever else is run, and never the same stick twice', () => {
    const of = (pads: readonly PadKind[], seed = 1): number[] =>
      seedsOf([...soundCells(seed, 5, pads), ...slipCells(seed, 5, pads)].filter(({ pad }) => pad === 'reported8'));
    const seeds = of(['reported8']);
    expect(of(padKinds)).toEqual(seeds);
    expect(new Set(seeds).size).toBe(seeds.length);
    expect(of(['reported8'], 2)).not.toEqual(seeds);
    const all = seedsOf(groupsOf(plan, sizeOf).flat());
    expect(new Set(all).size).toBe(all.length);
  });
});
