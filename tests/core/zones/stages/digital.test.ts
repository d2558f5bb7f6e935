import { describe, expect, it } from 'vitest';
import { runStages } from '../../../support/run-stages.ts';

describe('digital', () => {
  it('with 4 ways gives the larger axis where it exceeds the threshold', () => {
    const stage = { digital: { ways: 4, threshold: 0.5 } } as const;
    expect(runStages([stage], 0.5, 0.2)).toEqual({ x: 0, y: 0 });
    expect(runStages([stage], 0.51, -0.5)).toEqual({ x: 1, y: 0 });
    expect(runStages([stage], 0.51, -0.6)).toEqual({ x: 0, y: -1 });
    expect(runStages([stage], -0.7, 0.7)).toEqual({ x: -1, y: 0 });
  });

  it('with 8 ways gives the octant where the magnitude exceeds the threshold', () => {
    const stage = { digital: { ways: 8, threshold: 0.5 } } as const;
    const half = Math.SQRT1_2;
    expect(runStages([stage], 0.5, 0)).toEqual({ x: 0, y: 0 });
    const octants = [
      [1, 0],
      [half, half],
      [0, 1],
      [-half, half],
      [-1, 0],
      [-half, -half],
      [0, -1],
      [half, -half],
    ];
    for (const [index, [x, y]] of octants.entries())
      for (const degrees of [-22, 0, 22]) {
        const turn = ((index * 45 + degrees) * Math.PI) / 180;
        expect(runStages([stage], 0.6 * Math.cos(turn), 0.6 * Math.sin(turn))).toEqual({ x, y });
      }
  });
});
