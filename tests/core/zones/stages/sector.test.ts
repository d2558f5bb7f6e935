import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../../core/zones/chain.ts';
import { runStages } from '../../../support/run-stages.ts';

function push(stage: Stage, degrees: number, m: number): number {
  const turn = (degrees * Math.PI) / 180;
  const out = runStages([stage], m * Math.cos(turn), m * Math.sin(turn));
  return Math.hypot(out.x, out.y);
}

const four = [
  { inner: 0.1, outer: 1 },
  { inner: 0.2, outer: 1 },
  { inner: 0.3, outer: 1 },
  { inner: 0.4, outer: 1 },
];

describe('the zone by sectors', () => {
  it('centres the first sector on +x and goes on counter-clockwise', () => {
    const stage: Stage = { zone: 'sector', blend: false, sectors: four };
    for (const [degrees, inner] of [
      [0, 0.1],
      [44, 0.1],
      [316, 0.1],
      [46, 0.2],
      [90, 0.2],
      [180, 0.3],
      [-90, 0.4],
    ] as const) {
      expect(push(stage, degrees, inner - 1e-6)).toBe(0);
      expect(push(stage, degrees, 0.6)).toBeCloseTo((0.6 - inner) / (1 - inner), 12);
    }
  });

  it('blends linearly in angle between the centres of the sectors', () => {
    const stage: Stage = { zone: 'sector', blend: true, sectors: four };
    expect(push(stage, 0, 0.6)).toBeCloseTo((0.6 - 0.1) / 0.9, 12);
    expect(push(stage, 45, 0.6)).toBeCloseTo((0.6 - 0.15) / 0.85, 12);
    expect(push(stage, 315, 0.6)).toBeCloseTo((0.6 - 0.25) / 0.75, 12);
    expect(push(stage, 200, 0.6)).toBeCloseTo((0.6 - (0.3 + (0.1 * 20) / 90)) / (0.7 - (0.1 * 20) / 90), 12);
  });

  it('with one sector is the scaled radial zone, blended or not', () => {
    for (const blend of [false, true])
      expect(push({ zone: 'sector', blend, sectors: [{ inner: 0.2, outer: 0.8 }] }, 123, 0.5)).toBeCloseTo(0.5, 12);
  });
});
