import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeOf } from '../../../core/proposal/change-of-spans.ts';
import { solveEven } from '../../../core/proposal/even.ts';
import { solveFullReach } from '../../../core/proposal/full-reach.ts';
import {
  meanRadialMiss,
  reachOf,
  sortIntoQuadrants,
  type Quadrants,
  type Spans,
} from '../../../core/proposal/spans.ts';

/** A gate of `size` counts as seen from a centre that is a little off, its radius varied by a few shapes at once. */
function gate(size: number, wobble: readonly number[], directions = 72): Quadrants {
  const points = Array.from({ length: directions }, (_, k) => {
    const t = (k / directions) * 2 * Math.PI;
    const shape = wobble.reduce((sum, part, index) => sum + part * Math.cos((index + 1) * t + index), 0);
    const radius = size * (1 + shape / 100);
    return { x: Math.round(radius * Math.cos(t)), y: Math.round(radius * Math.sin(t)) };
  });
  return sortIntoQuadrants(points);
}

const wobbles = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 5, maxLength: 5 });
const LARGEST = 26;
const largest: Spans = { xPlus: LARGEST, xMinus: LARGEST, yPlus: LARGEST, yMinus: LARGEST };
const current: Spans = { xPlus: 20, xMinus: 20, yPlus: 20, yMinus: 20 };

/** Every combination of whole spans from 10 on, by counting: the same objective, no structure used. */
function bruteForce(quadrants: Quadrants, allowed: (spans: Spans) => boolean): { value: number; change: number } {
  let best = { value: Infinity, change: Infinity };
  for (let xPlus = 10; xPlus <= LARGEST; xPlus += 1)
    for (let xMinus = 10; xMinus <= LARGEST; xMinus += 1)
      for (let yPlus = 10; yPlus <= LARGEST; yPlus += 1)
        for (let yMinus = 10; yMinus <= LARGEST; yMinus += 1) {
          const spans = { xPlus, xMinus, yPlus, yMinus };
          const value = meanRadialMiss(quadrants, spans);
          if (value > best.value + 1e-12 || !allowed(spans)) continue;
          const change = changeOf(spans, current);
          if (value < best.value - 1e-12 || change < best.change) best = { value, change };
        }
  return best;
}

function reachesAll(quadrants: Quadrants, spans: Spans, need: number): boolean {
  return quadrants.at.every((row, xSide) =>
    row.every((list, ySide) =>
      list.every((dx, index) => {
        if (index % 2 === 1) return true;
        const reach = reachOf(
          dx,
          list[index + 1] ?? 0,
          xSide === 0 ? spans.xPlus : spans.xMinus,
          ySide === 0 ? spans.yPlus : spans.yMinus,
        );
        return reach >= need - 1e-12;
      }),
    ),
  );
}

describe('the aims full-reach and even', () => {
  it('even is never beaten by counting through every mapping, ties included', () => {
    fc.assert(
      fc.property(wobbles, (wobble) => {
        const quadrants = gate(20, wobble, 24);
        const found = solveEven(quadrants, largest, current)!;
        const brute = bruteForce(quadrants, () => true);
        expect(meanRadialMiss(quadrants, found)).toBeCloseTo(brute.value, 11);
        expect(changeOf(found, current)).toBeLessThanOrEqual(brute.change);
      }),
      { seed: 20261125, numRuns: 12 },
    );
  });

  it('full-reach is never beaten by counting through every mapping that reaches everywhere', () => {
    fc.assert(
      fc.property(wobbles, fc.constantFrom(0, 0.01, 0.05), (wobble, guard) => {
        const quadrants = gate(20, wobble, 24);
        const found = solveFullReach(quadrants, guard, largest, current)!;
        expect(reachesAll(quadrants, found, 1 + guard)).toBe(true);
        const brute = bruteForce(quadrants, (spans) => reachesAll(quadrants, spans, 1 + guard));
        expect(meanRadialMiss(quadrants, found)).toBeCloseTo(brute.value, 11);
        expect(changeOf(found, current)).toBeLessThanOrEqual(brute.change);
      }),
      { seed: 20261126, numRuns: 12 },
    );
  });

  it('beats a growth one edge at a time, which gets stuck where no single edge can move', () => {
    // Eight-sided and a little off: widening x first leaves too little for y, and no single edge can then be moved.
    const quadrants = gate(1000, [4, 3, -5, 2, 6]);
    const need = 1.01;
    const grown = growOneByOne(quadrants, need);
    for (const edge of ['xPlus', 'xMinus', 'yPlus', 'yMinus'] as const)
      expect(reachesAll(quadrants, { ...grown, [edge]: grown[edge] + 1 }, need)).toBe(false);
    const limit: Spans = { xPlus: 2000, xMinus: 2000, yPlus: 2000, yMinus: 2000 };
    const exact = solveFullReach(quadrants, 0.01, limit, grown)!;
    expect(meanRadialMiss(quadrants, exact)).toBeLessThan(meanRadialMiss(quadrants, grown) - 1e-3);
  });

  it('keeps to what the layer can hold', () => {
    const quadrants = gate(20, [0, 0, 0, 0, 0]);
    const narrow: Spans = { xPlus: 15, xMinus: 26, yPlus: 26, yMinus: 26 };
    expect(solveEven(quadrants, narrow, current)!.xPlus).toBeLessThanOrEqual(15);
    expect(solveFullReach(quadrants, 0.01, narrow, current)!.xPlus).toBeLessThanOrEqual(15);
  });

  it('has no full-reach answer for a direction in which the stick did not move', () => {
    expect(solveFullReach(sortIntoQuadrants([{ x: 0, y: 0 }]), 0.01, largest, current)).toBeNull();
  });
});

/** Widens each edge in turn as far as every direction still reaches. */
function growOneByOne(quadrants: Quadrants, need: number): Spans {
  let spans: Spans = { xPlus: 500, xMinus: 500, yPlus: 500, yMinus: 500 };
  for (const edge of ['xPlus', 'xMinus', 'yPlus', 'yMinus'] as const)
    while (reachesAll(quadrants, { ...spans, [edge]: spans[edge] + 1 }, need))
      spans = { ...spans, [edge]: spans[edge] + 1 };
  return spans;
}
