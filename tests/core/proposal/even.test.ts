import { describe, expect, it } from 'vitest';
import { solveEven } from '../../../core/proposal/even.ts';
import { sortIntoQuadrants, type Spans } from '../../../core/proposal/spans.ts';

const largest: Spans = { xPlus: 2000, xMinus: 2000, yPlus: 2000, yMinus: 2000 };
const current: Spans = { xPlus: 1500, xMinus: 1400, yPlus: 1300, yMinus: 1200 };

function ellipse({ xPlus, xMinus, yPlus, yMinus }: Spans) {
  return Array.from({ length: 72 }, (_, k) => {
    const turn = (5 * k * Math.PI) / 180;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return { x: (cos >= 0 ? xPlus : xMinus) * cos, y: (sin >= 0 ? yPlus : yMinus) * sin };
  });
}

describe('solveEven', () => {
  it('lays full output on a gate that four spans can meet everywhere', () => {
    const spans = { xPlus: 1100, xMinus: 900, yPlus: 1250, yMinus: 1020 };
    expect(solveEven(sortIntoQuadrants(ellipse(spans)), largest, current)).toEqual(spans);
  });

  /** One point along each axis that the current spans meet just so. */
  const pinned = [
    { x: 1500, y: 0 },
    { x: -1400, y: 0 },
    { x: 0, y: 1300 },
    { x: 0, y: -1200 },
  ];

  it('weighs what falls short and what goes beyond alike: half of the points on either side', () => {
    // |100/s − 1| + |100/s − 1| + |130/s − 1| is least where the two meet full output.
    const right = [...pinned.slice(1), ...[100, 100, 130].map((x) => ({ x, y: 0 }))];
    expect(solveEven(sortIntoQuadrants(right), largest, current)).toEqual({ ...current, xPlus: 100 });
    const down = [...pinned.slice(0, 3), ...[100, 130, 130].map((y) => ({ x: 0, y: -y }))];
    expect(solveEven(sortIntoQuadrants(down), largest, current)).toEqual({ ...current, yMinus: 130 });
  });

  it('leaves a span that no point needs as near to the current one as the layer holds', () => {
    const narrow = { ...largest, yMinus: 1100.9 };
    expect(solveEven(sortIntoQuadrants(pinned.slice(0, 3)), narrow, current)).toEqual({ ...current, yMinus: 1100 });
    expect(solveEven(sortIntoQuadrants(pinned.slice(1)), largest, current)).toEqual(current);
  });

  it('has no answer without points, and none where the layer holds no span', () => {
    expect(solveEven(sortIntoQuadrants([]), largest, current)).toBeNull();
    expect(solveEven(sortIntoQuadrants([{ x: 1, y: 1 }]), { ...largest, yPlus: 0.5 }, current)).toBeNull();
  });
});
