import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestGap } from '../../../core/geometry/angular-gap.ts';
import { fitCircle } from '../../../core/geometry/fit-circle.ts';
import { roundness, type Roundness } from '../../../core/geometry/roundness.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { anyMove, movePoints, retellPoints, ringPoints } from '../../support/point-sets.ts';

const seed = 20_261_134;

/** Readings all around a gate, radius by angle, in whole counts where asked. */
function gate(count: number, radius: (angle: number) => number, place: (value: number) => number): number[] {
  return Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count).flatMap((angle) => [
    place(2048 + radius(angle) * Math.cos(angle)),
    place(2048 + radius(angle) * Math.sin(angle)),
  ]);
}

function valuesOf({ leastSquares, minimumZone, minimumCircumscribed, maximumInscribed }: Roundness): number[] {
  return [leastSquares, minimumZone, minimumCircumscribed, maximumInscribed];
}

function exactly(value: number): number {
  return value;
}

describe('roundness', () => {
  it('has the minimum zone never above the other three', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        const found = roundness(points)!;
        expect(found.minimumZone).toBeGreaterThan(0);
        expect(found.minimumZone).toBeLessThanOrEqual(found.leastSquares);
        expect(found.minimumZone).toBeLessThanOrEqual(found.minimumCircumscribed);
        expect(found.minimumZone).toBeLessThanOrEqual(found.maximumInscribed);
      }),
      { seed },
    );
  });

  it('follows turns, scales and shifts', () => {
    fc.assert(
      fc.property(ringPoints, anyMove, (points, move) => {
        const found = roundness(points)!;
        const moved = roundness(movePoints(points, move))!;
        const tolerance = 1e-7 * (move.scale + 1);
        expectWithin(moved.minimumZone, move.scale * found.minimumZone, tolerance);
        expectWithin(moved.leastSquares, move.scale * found.leastSquares, tolerance);
      }),
      { seed, numRuns: 60 },
    );
  });

  it('does not mind points told twice, but for the least-squares circle, which they pull', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        const found = roundness(points)!;
        const retold = roundness(retellPoints(points))!;
        expectWithin(retold.minimumZone, found.minimumZone, 1e-12);
        expectWithin(retold.minimumCircumscribed, found.minimumCircumscribed, 1e-9);
      }),
      { seed, numRuns: 60 },
    );
  });

  it('says nothing where the angle without a point reaches 90°', () => {
    const arc = (open: number): number[] =>
      Array.from({ length: 60 }, (_, k) => ((360 - open) * k) / 59).flatMap((degrees) => [
        Math.cos((degrees * Math.PI) / 180),
        Math.sin((degrees * Math.PI) / 180),
      ]);
    expect(roundness(arc(91))).toBeNull();
    expect(roundness(arc(90))).toBeNull();
    expect(roundness(arc(89))).not.toBeNull();
    // Four points leave 90° at least, however they are turned.
    for (const angle of [0, 17, 45]) {
      expect(roundness(movePoints([1, 0, 0, 1, -1, 0, 0, -1], { angle, scale: 3, x: 1, y: 2 }))).toBeNull();
    }
  });

  it('is stated just where the gap about the least-squares centre stays below 90°', () => {
    const open = fc.integer({ min: 70, max: 110 });
    const offs = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 24, maxLength: 24 });
    let stated = 0;
    let refused = 0;
    fc.assert(
      fc.property(open, offs, (gap, radii) => {
        const points = radii.flatMap((off, k) => {
          const angle = (((360 - gap) * k) / (radii.length - 1)) * (Math.PI / 180);
          const radius = 1 + off / 2000;
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        const { x, y } = fitCircle(points)!;
        const isStated = largestGap(points, x, y) < 90;
        if (isStated) stated += 1;
        else refused += 1;
        expect(roundness(points) !== null).toBe(isStated);
      }),
      { seed },
    );
    expect(Math.min(stated, refused)).toBeGreaterThan(20);
  });

  it('says nothing for points on a line, equal points and none', () => {
    expect(roundness([0, 0, 1, 1, 2, 2, 3, 3])).toBeNull();
    expect(roundness([5, 5, 5, 5, 5, 5])).toBeNull();
    expect(roundness([])).toBeNull();
  });

  it('stays exact for 100,000 points on a circle, to its rounding', () => {
    const found = roundness(gate(100_000, () => 1500, exactly))!;
    for (const value of valuesOf(found)) expect(value).toBeLessThan(1e-11);
  });

  it('stays exact for 100,000 points of a lobed outline', () => {
    const found = roundness(gate(100_000, (angle) => 1500 + 7.5 * Math.cos(5 * angle), exactly))!;
    for (const value of valuesOf(found)) expectWithin(value, 15, 1e-9);
  });

  it('copes with 100,000 noisy readings in whole counts, most of them more than once', () => {
    const random = createRandom(seed);
    const found = roundness(
      gate(100_000, (angle) => 60 * (1 + 0.02 * Math.cos(8 * angle)) + 0.2 * random.normal(), Math.round),
    )!;
    expect(found.minimumZone).toBeGreaterThan(2);
    expect(found.minimumZone).toBeLessThanOrEqual(Math.min(...valuesOf(found)));
    expect(found.leastSquares).toBeLessThan(7);
  });
});
