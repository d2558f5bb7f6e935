import { describe, expect, it } from 'vitest';
import { gateRadius, stopAtGate } from '../../../core/simulate/gate.ts';

const eightSided = { shape: 'eightSided', radius: 1, centre: { x: 0, y: 0 } } as const;

describe('the gate', () => {
  it('has its corners at multiples of 45° and its sides nearest half way between', () => {
    for (let corner = -180; corner <= 180; corner += 45) {
      expect(gateRadius(eightSided, (corner * Math.PI) / 180)).toBeCloseTo(1, 12);
      expect(gateRadius(eightSided, ((corner + 22.5) * Math.PI) / 180)).toBeCloseTo(Math.cos(Math.PI / 8), 12);
    }
  });

  it('is flat along a side', () => {
    const points = [5, 15, 22.5, 40].map((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      const radius = gateRadius(eightSided, angle);
      return radius * Math.cos(angle - Math.PI / 8);
    });
    for (const distance of points) expect(distance).toBeCloseTo(Math.cos(Math.PI / 8), 12);
  });

  it('stops a push at its edge and leaves a stick inside alone', () => {
    const gate = { shape: 'round', radius: 1, centre: { x: 0.1, y: 0 } } as const;
    expect(stopAtGate(gate, { x: 0.3, y: -0.4 })).toEqual({ x: 0.3, y: -0.4 });
    expect(stopAtGate(gate, { x: 5, y: 0 }).x).toBeCloseTo(1.1, 12);
    expect(stopAtGate(gate, { x: -5, y: 0 }).x).toBeCloseTo(-0.9, 12);
  });
});
