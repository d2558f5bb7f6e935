import { describe, expect, it } from 'vitest';
import { responseCurve } from '../../../core/plot/response-curve.ts';
import type { ChainFunction } from '../../../core/zones/run-chain.ts';

const fields = { x: { minimum: 0, maximum: 2000, up: 1 }, y: { minimum: 0, maximum: 2000, up: -1 } } as const;
const mapping = { x: { min: 0, centre: 1000, max: 2000 }, y: { min: 0, centre: 1000, max: 2000 } };
const asItIs: ChainFunction = (x, y, out) => {
  out[0] = x;
  out[1] = y;
};
const cut: ChainFunction = (x, y, out) => {
  const pass = Math.hypot(x, y) > 0.1;
  out[0] = pass ? x : 0;
  out[1] = pass ? y : 0;
};

function at(curve: Float64Array, push: number): number {
  for (let i = 0; i < curve.length; i += 2) if (Math.abs((curve[i] ?? 0) - push) < 1e-9) return curve[i + 1] ?? 0;
  return Number.NaN;
}

describe('responseCurve', () => {
  it('goes in a straight line from rest to the reach at the gate', () => {
    const curve = responseCurve(mapping, fields, { x: 1000, y: 1000 }, { x: 1900, y: 1000 }, asItIs);
    expect(at(curve, 0)).toBe(0);
    expect(at(curve, 0.5)).toBeCloseTo(0.45, 12);
    expect(at(curve, 1)).toBeCloseTo(0.9, 12);
  });

  it('stops at full output where the gate lies beyond it', () => {
    const curve = responseCurve(mapping, fields, { x: 1000, y: 1000 }, { x: 1000, y: -100 }, asItIs);
    expect(at(curve, 1)).toBe(1);
  });

  it('draws the step of a zone upright where the push leaves it', () => {
    const curve = responseCurve(mapping, fields, { x: 1000, y: 1000 }, { x: 2000, y: 1000 }, cut);
    const first = curve.findIndex((value, index) => index % 2 === 1 && value > 0);
    expect(curve[first - 1]).toBeCloseTo(0.1, 5);
    expect((curve[first - 1] ?? 0) - (curve[first - 3] ?? 0)).toBeLessThan(1e-5);
    expect(curve[first - 2]).toBe(0);
  });

  it('begins with the output that leaks at rest', () => {
    const curve = responseCurve(mapping, fields, { x: 1200, y: 1000 }, { x: 2000, y: 1000 }, cut);
    expect(at(curve, 0)).toBeCloseTo(0.2, 12);
  });
});
