import { describe, expect, it } from 'vitest';
import { fitEllipse } from '../../core/geometry/fit-ellipse.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Shape {
  readonly cx: number;
  readonly cy: number;
  readonly a: number;
  readonly b: number;
  readonly theta: number;
}

interface EllipseCase {
  readonly id: string;
  readonly points: [number, number][];
  readonly parameters: Shape;
  readonly angles: number[];
  readonly computed: { directHalirFlusser: Shape };
}

const { cases } = readGolden('ellipse_fits') as { cases: EllipseCase[] };

function caseNamed(id: string): EllipseCase {
  return cases.find((each) => each.id === id)!;
}

function pointsOn({ cx, cy, a, b, theta }: Shape, angles: readonly number[]): number[] {
  return angles.flatMap((t) => [
    cx + a * Math.cos(t) * Math.cos(theta) - b * Math.sin(t) * Math.sin(theta),
    cy + a * Math.cos(t) * Math.sin(theta) + b * Math.sin(t) * Math.cos(theta),
  ]);
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** Directions of an axis differ by at most 90°. */
function axisDifference(one: number, other: number): number {
  const apart = Math.abs(one - other) % 180;
  return Math.min(apart, 180 - apart);
}

describe('direct ellipse fits', () => {
  it.each([
    ['gander8', 'Gander, Golub, Strebel 1994, eight points (points from memory; fit computed)', 1e-8],
    ['edge136', 'scikit-image, 136 pixels of an edge (points seen; fit computed)', 1e-3],
  ])('%s: %s', (id, _source, tolerance) => {
    const { points, computed } = caseNamed(id);
    const expected = computed.directHalirFlusser;
    const found = fitEllipse(points.flat());
    expectWithin(found?.x, expected.cx, tolerance);
    expectWithin(found?.y, expected.cy, tolerance);
    expectWithin(found?.a, expected.a, tolerance);
    expectWithin(found?.b, expected.b, tolerance);
    expectWithin(found?.angle, degrees(expected.theta), degrees(tolerance));
  });

  it('scikit-image: recovers an ellipse a million units away to 1e-7 (seen)', () => {
    const { parameters, angles } = caseNamed('shifted12');
    const found = fitEllipse(pointsOn(parameters, angles));
    expectWithin(found?.x, parameters.cx, 1e-7);
    expectWithin(found?.y, parameters.cy, 1e-7);
    expectWithin(found?.a, parameters.a, 1e-7);
    expectWithin(found?.b, parameters.b, 1e-7);
    expectWithin(found?.angle, degrees(parameters.theta), degrees(1e-7));
  });

  it('scikit-image: keeps the major axis first at every whole degree, its angle to 1e-7 (seen)', () => {
    const angles = Array.from({ length: 20 }, (_, k) => (2 * Math.PI * k) / 19);
    for (let turned = 0; turned <= 180; turned += 1) {
      const shape = { cx: 0, cy: 0, a: 100, b: 50, theta: (turned * Math.PI) / 180 };
      const found = fitEllipse(pointsOn(shape, angles))!;
      expectWithin(found.a, 100, 1e-7);
      expectWithin(found.b, 50, 1e-7);
      expect(found.angle).toBeGreaterThanOrEqual(0);
      expect(found.angle).toBeLessThan(180);
      expect(axisDifference(found.angle, turned)).toBeLessThan(1e-7);
    }
  });
});
