import { describe, expect, it } from 'vitest';
import { enclosingCircle } from '../../core/geometry/enclosing-circle.ts';
import { maximumInscribed } from '../../core/geometry/maximum-inscribed.ts';
import { minimumZone } from '../../core/geometry/minimum-zone.ts';
import { roundness } from '../../core/geometry/roundness.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface RoundnessCase {
  readonly id: string;
  readonly points: [number, number][];
  readonly lsRadius: number;
  readonly RONt_LSCI: number;
  readonly RONt_MZCI: number;
  readonly RONt_MCCI: number;
  readonly RONt_MICI: number;
  readonly mzRadii: [number, number];
  readonly mccRadius: number;
  readonly micRadius: number;
  readonly publishedMZ: { value: number };
}

interface Lobed {
  readonly N: number;
  readonly A: number;
  readonly R0: number;
}

const { cases, analytic } = readGolden('roundness') as { cases: RoundnessCase[]; analytic: Lobed[] };

function outline(radius: (angle: number) => number, points = 360): number[] {
  return Array.from({ length: points }, (_, k) => (2 * Math.PI * k) / points).flatMap((angle) => [
    radius(angle) * Math.cos(angle),
    radius(angle) * Math.sin(angle),
  ]);
}

describe('roundness of published point sets', () => {
  it.each(cases)('$id: RONt against the four circles (points seen; values computed)', (expected) => {
    const found = roundness(expected.points.flat())!;
    expectWithin(found.leastSquares, expected.RONt_LSCI, 1e-9 * expected.lsRadius);
    expectWithin(found.minimumZone, expected.RONt_MZCI, 1e-8 * expected.lsRadius);
    expectWithin(found.minimumCircumscribed, expected.RONt_MCCI, 1e-9 * expected.lsRadius);
    expectWithin(found.maximumInscribed, expected.RONt_MICI, 1e-8 * expected.lsRadius);
  });

  it.each(cases)('$id: the minimum zone of papers on it (memory)', ({ points, publishedMZ }) => {
    expectWithin(roundness(points.flat())?.minimumZone, publishedMZ.value, 5e-7);
  });

  it.each(cases)('$id: radii of the reference circles (computed)', (expected) => {
    const flat = expected.points.flat();
    expectWithin(minimumZone(flat)?.inner, expected.mzRadii[0], 1e-8 * expected.lsRadius);
    expectWithin(minimumZone(flat)?.outer, expected.mzRadii[1], 1e-8 * expected.lsRadius);
    expectWithin(enclosingCircle(flat)?.radius, expected.mccRadius, 1e-9 * expected.lsRadius);
    expectWithin(maximumInscribed(flat)?.radius, expected.micRadius, 1e-8 * expected.lsRadius);
  });
});

describe('roundness of outlines with a known answer', () => {
  it.each(analytic)('R₀ + A·cos Nθ, N = $N, A = $A: zone 2A about 0, circumscribed R₀ + A (closed form)', (shape) => {
    const points = outline((angle) => shape.R0 + shape.A * Math.cos(shape.N * angle));
    const zone = minimumZone(points)!;
    expectWithin(zone.outer - zone.inner, 2 * shape.A, 1e-10);
    expectWithin(zone.x, 0, 1e-10);
    expectWithin(zone.y, 0, 1e-10);
    expectWithin(enclosingCircle(points)?.radius, shape.R0 + shape.A, 1e-10);
  });

  it.each(analytic.filter(({ N }) => N >= 3))(
    'R₀ + A·cos Nθ, N = $N, A = $A: inscribed R₀ − A (closed form)',
    (shape) => {
      const points = outline((angle) => shape.R0 + shape.A * Math.cos(shape.N * angle));
      expectWithin(maximumInscribed(points)?.radius, shape.R0 - shape.A, 1e-10);
    },
  );

  it.each(analytic.filter(({ N }) => N === 2))(
    'R₀ + A·cos 2θ, A = $A: inscribed R₀ − A and at most what sampling adds (closed form)',
    ({ R0, A }) => {
      const found = maximumInscribed(outline((angle) => R0 + A * Math.cos(2 * angle)))!;
      // Two points alone bound it: a centre off them by d gains d²/2R₀ until the neighbours, 1° on and higher by
      // A(1 − cos 2°), are met at d = A(1 − cos 2°)/sin 1° and a little.
      const step = Math.PI / 180;
      const room = (A * (1 - Math.cos(2 * step))) / Math.sin(step);
      expect(found.radius).toBeGreaterThanOrEqual(R0 - A - 1e-12);
      expect(found.radius).toBeLessThanOrEqual(R0 - A + (1.1 * room * room) / (2 * (R0 - A)));
    },
  );

  it('an ellipse with its vertices: zone a − b, circumscribed a, inscribed b (closed form)', () => {
    const angles = Array.from({ length: 360 }, (_, k) => (2 * Math.PI * k) / 360);
    const points = angles.flatMap((t) => [Math.cos(t), 0.98 * Math.sin(t)]);
    const zone = minimumZone(points)!;
    expectWithin(zone.outer - zone.inner, 0.02, 1e-10);
    expectWithin(enclosingCircle(points)?.radius, 1, 1e-10);
    // Between its two nearest points a sampled ellipse leaves a little more room a little off the centre: 6e-8 at this spacing.
    const inscribed = maximumInscribed(points)!.radius;
    expect(inscribed).toBeGreaterThanOrEqual(0.98);
    expect(inscribed).toBeLessThan(0.98 + 1e-7);
  });
});
