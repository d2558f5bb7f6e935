import { describe, expect, it } from 'vitest';
import type { Cell } from './cells.ts';
import type { Judged } from './judge-draw.ts';
import { faultPools, soundPools, type Drawn } from './pools.ts';

function drawn(part: Cell['part'], name: string, pad: Cell['pad'], gates: readonly string[]): Drawn {
  return [{ part, name, pad, wishes: [] }, gates.map((gate) => ({ gate }) as unknown as Judged)];
}

const group = [
  drawn('sound', 'round', 'sensor12', ['round', 'round']),
  drawn('sound', 'fourSided', 'sensor12', ['fourSided']),
  drawn('sound', 'round', 'reported8', ['round', 'round', 'round']),
  drawn('far', 'skew', 'sensor12', ['round', 'sixSided']),
  drawn('far', 'skew', 'reported8', ['sixSided']),
];
const sizes = (pools: ReturnType<typeof soundPools>): [string, string, number][] =>
  pools.map(({ name, pad, judged }) => [name, pad, judged.length]);

describe('pools of draws', () => {
  it('take sound sticks together by kind of pad, and by gate', () => {
    expect(sizes(soundPools(group))).toEqual([
      ['every gate', 'sensor12', 3],
      ['every gate', 'reported8', 3],
      ['round', 'every pad', 5],
      ['fourSided', 'every pad', 1],
      ['every gate', 'every pad', 6],
    ]);
  });

  it('take a fault together by the gate of its sticks, where there is one', () => {
    expect(sizes(faultPools(group))).toEqual([
      ['skew, round', 'every pad', 1],
      ['skew, sixSided', 'every pad', 2],
    ]);
  });
});
