import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/zones/chain.ts';
import { fullTilt, onsetAlong } from '../../../core/zones/onset.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';

function onset(stages: readonly Stage[], rest: { x: number; y: number }, angle: number, gate = 1): number | null {
  return onsetAlong(compileChain({ stages }), rest, angle, gate);
}

describe('onsetAlong', () => {
  it('is 0 where the rest itself leaks', () => {
    expect(onset([{ zone: 'radial', inner: 0.05 }], { x: 0.06, y: 0 }, 180)).toBe(0);
    expect(onset([], { x: 0, y: 0 }, 30)).toBeCloseTo(0, 9);
  });

  it('is met at the first output even of a chain that falls silent again', () => {
    const points = [
      [0, 0],
      [0.2, 0],
      [0.25, 1],
      [0.3, 0],
      [1, 0],
    ] as const;
    expect(onset([{ curve: { points } }], { x: 0, y: 0 }, 0)).toBeCloseTo(0.2, 9);
  });

  it('follows the square of an axial zone', () => {
    const square: Stage = { zone: 'axial', inner: 0.1 };
    expect(onset([square], { x: 0, y: 0 }, 0)).toBeCloseTo(0.1, 9);
    expect(onset([square], { x: 0, y: 0 }, 45)).toBeCloseTo(0.1 * Math.SQRT2, 9);
    expect(onset([square], { x: 0.04, y: 0 }, 180)).toBeCloseTo(0.14, 9);
  });

  it('is met on the gate itself and not beyond', () => {
    expect(onset([{ zone: 'radial', inner: 0.4999 }], { x: 0, y: 0 }, 0, 0.5)).toBeCloseTo(0.4999, 9);
    expect(onset([{ zone: 'radial', inner: 0.5 }], { x: 0, y: 0 }, 0, 0.5)).toBeNull();
    expect(onset([{ zone: 'radial', inner: 0.2 }], { x: 0, y: 0 }, 0, 0)).toBeNull();
  });
});

it('fullTilt is where the ray from the rest meets the unit circle', () => {
  expect(fullTilt({ x: 0, y: 0 }, 123)).toBeCloseTo(1, 12);
  expect(fullTilt({ x: 0.2, y: 0 }, 0)).toBeCloseTo(0.8, 12);
  expect(fullTilt({ x: 0.2, y: 0 }, 180)).toBeCloseTo(1.2, 12);
  expect(fullTilt({ x: 0.6, y: 0 }, 90)).toBeCloseTo(0.8, 12);
  expect(fullTilt({ x: 2, y: 0 }, 0)).toBe(0);
});
