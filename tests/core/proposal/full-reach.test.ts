import { describe, expect, it } from 'vitest';
import { solveFullReach } from '../../../core/proposal/full-reach.ts';
import { sortIntoQuadrants, type Spans } from '../../../core/proposal/spans.ts';

const largest: Spans = { xPlus: 200, xMinus: 200, yPlus: 200, yMinus: 200 };
const current: Spans = { xPlus: 100, xMinus: 100, yPlus: 100, yMinus: 100 };

describe('solveFullReach', () => {
  const cross = sortIntoQuadrants([
    { x: 10, y: 0 },
    { x: -20, y: 0 },
    { x: 0, y: 30 },
    { x: 0, y: -40 },
  ]);

  it('takes along each axis the widest span that reaches full output and the guard', () => {
    expect(solveFullReach(cross, 0.25, largest, current)).toEqual({ xPlus: 8, xMinus: 16, yPlus: 24, yMinus: 32 });
    // 10/1.2 = 8.3, 20/1.2 = 16.7, 30/1.2 = 25, 40/1.2 = 33.3: whole counts below.
    expect(solveFullReach(cross, 0.2, largest, current)).toEqual({ xPlus: 8, xMinus: 16, yPlus: 25, yMinus: 33 });
  });

  it('shares a diagonal between both of its axes, nearest to the current edges among equally good ones', () => {
    // (30, 40) reaches just 1 under 50 and 50, and under 34 and 85: 15/17 and 8/17.
    const diagonal = sortIntoQuadrants([1, -1].flatMap((x) => [1, -1].map((y) => ({ x: 30 * x, y: 40 * y }))));
    const at = (x: number, y: number): Spans => ({ xPlus: x, xMinus: x, yPlus: y, yMinus: y });
    expect(solveFullReach(diagonal, 0, largest, at(51, 50))).toEqual(at(50, 50));
    expect(solveFullReach(diagonal, 0, largest, at(34, 84))).toEqual(at(34, 85));
  });

  it('keeps to what the layer holds', () => {
    const narrow = { xPlus: 7.9, xMinus: 200, yPlus: 9, yMinus: 200 };
    expect(solveFullReach(cross, 0.25, narrow, current)).toEqual({ xPlus: 7, xMinus: 16, yPlus: 9, yMinus: 32 });
  });

  it('has no answer where a point reaches too little under any span', () => {
    // 1/1 is less than 1.25.
    expect(solveFullReach(sortIntoQuadrants([{ x: 1, y: 0 }]), 0.25, largest, current)).toBeNull();
    expect(solveFullReach(sortIntoQuadrants([{ x: 0, y: -1 }]), 0.25, largest, current)).toBeNull();
    expect(solveFullReach(sortIntoQuadrants([{ x: 0, y: 1 }]), 0.25, largest, current)).toBeNull();
  });
});
