import { describe, expect, it } from 'vitest';
import { Chance } from './chance.ts';
import { drawPart } from './draw-part.ts';
import { faults, type FaultName } from './faults.ts';
import { drawGate, FULL_TILT, gateRadius, type Gate } from './gate.ts';
import { drawPad } from './pad-plan.ts';
import type { AxisLaw, Part } from './part.ts';
import { apart, directionOf, minus, ORIGIN, polar, sizeOf } from './plane.ts';
import { sensedAt } from './sensor-law.ts';
import { truthOf } from './truth.ts';

const ring: Gate = { shape: 'round', corner: 0, rounding: 1, waves: [], give: 0 };
const law: AxisLaw = { span: 0.6, offset: 0, plusGain: 1, minusGain: 1, cubic: 0 };
const drawn = drawPart('round', new Chance(1, 'unit'));
/** Everything at its nominal, so that what is left is the fault. */
const even: Part = {
  ...drawn,
  ...{ gate: ring, seat: ORIGIN, springOff: ORIGIN, turned: 0, skew: 0, geometry: 'flat', x: law, y: law },
};

function faulty(name: FaultName, size: number, seed = 3): Part {
  const plan = drawPad('sensor12', new Chance(1, 'pad'));
  return faults[name].apply({ part: even, plan, stale: 0 }, size, new Chance(seed, 'fault')).part;
}

describe('a part at its nominal', () => {
  it('reads 0 at rest and 1 all around', () => {
    const { rest, least, greatest, sides } = truthOf(even);
    expect(rest).toEqual({ x: 0, y: 0 });
    expect(greatest.x).toBeCloseTo(1, 9);
    expect(greatest.y).toBeCloseTo(1, 9);
    expect(least.x).toBeCloseTo(-1, 9);
    expect(sides.x).toBeCloseTo(0, 9);
  });

  it('bulges at the diagonals where each sensor sees the angle of its own frame', () => {
    const { x } = sensedAt({ ...even, geometry: 'gimbal' }, polar(FULL_TILT, 45));
    // atan(tan 23° · cos 45°) = 16.707°.
    expect(x).toBeCloseTo(16.707 / 23, 4);
  });
});

describe('a fault of shape moves the noiseless reading by its size', () => {
  it('off-centre: the rest, and not the gate', () => {
    const { rest, greatest } = truthOf(faulty('off-centre-part', 4));
    expect(Math.hypot(rest.x, rest.y)).toBeCloseTo(0.04, 9);
    expect(greatest.x).toBeCloseTo(1, 9);
  });

  it('seat: the gate about the rest, by its degrees of 23', () => {
    const part = faulty('seat-tilt', 1.2);
    const { rest, least, greatest } = truthOf(part);
    expect(Math.hypot(rest.x, rest.y)).toBeCloseTo(0, 9);
    const middle = { x: (least.x + greatest.x) / 2, y: (least.y + greatest.y) / 2 };
    expect(sizeOf(middle)).toBeCloseTo(1.2 / 23, 4);
  });

  it('skew and turn: the directions that a push along each axis reads', () => {
    const read = (part: Part, degrees: number): number => directionOf(sensedAt(part, polar(10, degrees)));
    const skewed = faulty('skew', 10);
    expect(Math.abs(apart(read(skewed, 90), read(skewed, 0)) - 90)).toBeCloseTo(10, 6);
    const turned = faulty('turned', 12);
    expect(apart(read(turned, 0), 0)).toBeCloseTo(12, 6);
    expect(apart(read(turned, 90), 90)).toBeCloseTo(12, 6);
  });

  it('short side, clip, curve and shared ground', () => {
    const short = truthOf(faulty('short-side', 6));
    expect(Math.max(short.sides.x, short.sides.y)).toBeCloseTo(6, 6);
    expect(Math.min(short.sides.x, short.sides.y)).toBeCloseTo(0, 6);
    const clipped = truthOf(faulty('clipped', 4));
    expect(Math.max(clipped.sides.x, clipped.sides.y)).toBeCloseTo(4, 6);
    expect(sizeOf(sensedAt(faulty('curved', 13), polar(FULL_TILT, 45)))).toBeCloseTo(0.87, 6);
    expect(sizeOf(sensedAt(faulty('curved', 13), polar(FULL_TILT, 0)))).toBeCloseTo(1, 6);
    const shared = faulty('shared-ground', 8);
    const [right, up] = [sensedAt(shared, polar(10, 0)), sensedAt(shared, polar(10, 90))];
    expect(Math.max(Math.abs(right.y / right.x), Math.abs(up.x / up.y))).toBeCloseTo(0.08, 6);
  });
});

describe('gates', () => {
  it('stand in the main directions at full tilt, and turn their corners without a step', () => {
    for (const shape of ['round', 'eightSided', 'sixSided', 'fourSided'] as const) {
      const gate = { ...drawGate(shape, new Chance(5, 'gate')), waves: [] };
      const radii = Array.from({ length: 3601 }, (_, at) => gateRadius(gate, at / 10));
      const steps = radii.slice(1).map((radius, at) => Math.abs(radius - (radii[at] ?? 0)));
      expect(Math.max(...steps), shape).toBeLessThan(0.05);
      const least = Math.min(...radii);
      const most = Math.max(...radii);
      if (shape === 'fourSided') expect(least).toBeCloseTo(FULL_TILT, 2);
      else expect(most).toBeCloseTo(FULL_TILT, 2);
      const spread = { round: 0, eightSided: 0.08, sixSided: 0.135, fourSided: 0.3 }[shape];
      expect(1 - least / most).toBeLessThanOrEqual(spread);
      expect(1 - least / most).toBeGreaterThanOrEqual(spread / 8);
    }
  });

  it('have waves of 0.3 % of the radius', () => {
    const sizes = Array.from({ length: 300 }, (_, at) => drawGate('round', new Chance(at, 'gate')).waves).flat();
    const sigma = Math.sqrt(sizes.reduce((sum, { size }) => sum + size ** 2, 0) / sizes.length);
    expect(sigma).toBeGreaterThan(0.0028);
    expect(sigma).toBeLessThan(0.0032);
  });
});

describe('a sound part', () => {
  it('is within what a data sheet allows, whatever the seed', () => {
    for (let seed = 0; seed < 200; seed += 1) {
      const part = drawPart('round', new Chance(seed, 'unit'));
      for (const { plusGain, minusGain } of [part.x, part.y]) {
        expect(Math.abs(plusGain - 1)).toBeLessThanOrEqual(0.015);
        expect(Math.abs(minusGain - 1)).toBeLessThanOrEqual(0.015);
      }
      expect(Math.abs(part.skew)).toBeLessThanOrEqual(2.5);
      expect(sizeOf(minus(part.seat, ORIGIN))).toBeLessThan(0.5);
      expect(part.lost).toEqual([]);
    }
  });
});
