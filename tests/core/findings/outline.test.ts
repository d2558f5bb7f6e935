import { describe, expect, it } from 'vitest';
import { fitOutline } from '../../../core/findings/outline/fit-outline.ts';
import type { RimPoint } from '../../../core/findings/outline/outline-model.ts';
import { invertSymmetric } from '../../../core/findings/outline/solve-normal.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { expectRelative } from '../../support/expect-close.ts';
import { shiftedGate, shortGate, skewedGate } from './make-subject.ts';
import { sideWave, spreadOf } from './odd-waves.ts';

function rim(radius: (degrees: number) => number, angles = Array.from({ length: 72 }, (_, i) => 5 * i)): RimPoint[] {
  return angles.map((angle) => {
    const turn = (angle * Math.PI) / 180;
    return { angle, dx: 1000 * radius(angle) * Math.cos(turn), dy: 1000 * radius(angle) * Math.sin(turn) };
  });
}

function eightSided(degrees: number, corner: number): number {
  const from = ((((degrees - corner) % 45) + 45) % 45) - 22.5;
  return Math.cos(Math.PI / 8) / Math.cos((from * Math.PI) / 180);
}

describe('the outline of a gate', () => {
  it('tells a rest off the centre from a side that reads short', () => {
    const shifted = fitOutline(rim(shiftedGate(0.05)))!;
    expect(shifted.value.centreX).toBeCloseTo(-0.05, 6);
    expect(shifted.value.xPlus / shifted.value.xMinus).toBeCloseTo(1, 6);
    const short = fitOutline(rim(shortGate(0.05)))!;
    expect(short.value.centreX).toBeCloseTo(0, 6);
    expect(short.value.xPlus / short.value.xMinus).toBeCloseTo(0.95, 6);
  });

  it('finds both at once, and how far the axes lean', () => {
    const both = fitOutline(
      rim((angle) => {
        const turn = (angle * Math.PI) / 180;
        // |(x/g − 0.03, y)| = 1 along the direction, g = 0.96 to the right.
        const gain = Math.cos(turn) > 0 ? 0.96 : 1;
        const a = (Math.cos(turn) / gain) ** 2 + Math.sin(turn) ** 2;
        const b = (-2 * 0.03 * Math.cos(turn)) / gain;
        return (-b + Math.sqrt(b * b - 4 * a * (0.03 ** 2 - 1))) / (2 * a);
      }),
    )!;
    expect(both.value.centreX).toBeCloseTo(0.03, 5);
    expect(both.value.xPlus / both.value.xMinus).toBeCloseTo(0.96, 5);
    const skewed = fitOutline(rim(skewedGate(5)))!;
    expect((2 * Math.atan(skewed.value.lean) * 180) / Math.PI).toBeCloseTo(5, 5);
  });

  it('sees eight corners and how far they are turned', () => {
    const fit = fitOutline(rim((angle) => eightSided(angle, 4)))!;
    expect(fit.sides).toBe(8);
    expect(((fit.value.corner * 180) / Math.PI) % 45).toBeCloseTo(4, 3);
    expect(fit.value.centreX).toBeCloseTo(0, 4);
  });

  it('leaves out points that went astray', () => {
    const points = rim(() => 1);
    points[7] = { angle: 35, dx: 1500, dy: 200 };
    const fit = fitOutline(points)!;
    expect(fit.points).toBe(71);
    expect(fit.value.xPlus).toBeCloseTo(1000, 3);
  });

  it('states no fit of half a gate, of few points, of one point many times, or of numbers that are none', () => {
    const angles = Array.from({ length: 36 }, (_, i) => 5 * i);
    expect(fitOutline(rim(() => 1, angles))).toBeNull();
    expect(fitOutline(rim(() => 1).slice(0, 2))).toBeNull();
    expect(fitOutline([])).toBeNull();
    expect(fitOutline(rim(() => 0))).toBeNull();
    expect(fitOutline(rim(() => Number.NaN))).toBeNull();
    expect(fitOutline(rim(() => 1).map((one) => ({ ...one, dx: 1000, dy: 0 })))).toBeNull();
  });

  it('knows the first wave of the rim to what is left over, but not what a wave of the gate can pretend', () => {
    const noisy = (sigma: number) => {
      const random = createRandom(3);
      const radii = Array.from({ length: 72 }, () => 1 + sigma * random.normal());
      return fitOutline(rim((angle) => radii[angle / 5]!))!;
    };
    const side = { xPlus: 1 / 1000, xMinus: -1 / 1000 };
    const first = { centreX: 1, xPlus: sideWave(1) / 2000, xMinus: -sideWave(1) / 2000 };
    // σ comes from what 72 points leave over: known to some 10 %, its square to 20 %.
    expectRelative(noisy(0.004).variance(first), spreadOf(0.004).first, 0.25);
    expect(noisy(0.0005).variance(first)).toBeLessThan(noisy(0.004).variance(first) / 8);
    for (const sigma of [0.0005, 0.004]) {
      expectRelative(noisy(sigma).variance(side), spreadOf(sigma).side, 0.25);
      // The second wave of a gate, 0.3 %, hides the whole of a lean.
      expectRelative(noisy(sigma).variance({ lean: 1 }), 0.003 ** 2, 0.08);
    }
  });
});

describe('the inverse of a symmetric matrix', () => {
  it('times the matrix is one, and a matrix that has none is answered with null', () => {
    const matrix = Float64Array.from([4, 1, 0.5, 1, 3, 0.2, 0.5, 0.2, 2]);
    const inverse = invertSymmetric(matrix, 3)!;
    for (let row = 0; row < 3; row += 1)
      for (let column = 0; column < 3; column += 1) {
        const sum = [0, 1, 2].reduce((all, k) => all + matrix[row * 3 + k]! * inverse[k * 3 + column]!, 0);
        expect(sum).toBeCloseTo(row === column ? 1 : 0, 12);
      }
    expect(invertSymmetric(Float64Array.from([1, 1, 1, 1]), 2)).toBeNull();
    expect(invertSymmetric(Float64Array.from([Number.NaN]), 1)).toBeNull();
  });
});
