import { describe, expect, it } from 'vitest';
import { enclosingCircle } from '../../core/geometry/enclosing-circle.ts';
import { fitCircle } from '../../core/geometry/fit-circle.ts';
import { maximumInscribed } from '../../core/geometry/maximum-inscribed.ts';
import { minimumZone } from '../../core/geometry/minimum-zone.ts';
import { standardisePoints, type Circle } from '../../core/geometry/points.ts';
import { roundness } from '../../core/geometry/roundness.ts';
import { taubinCircle } from '../../core/geometry/taubin-circle.ts';
import { covariance2 } from '../../core/numeric/covariance.ts';
import { mean } from '../../core/numeric/mean.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Fit {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}

interface CircleCase {
  readonly id: string;
  readonly points: [number, number][];
  readonly published?: { geometric?: Fit };
  readonly computed: { kasa?: Fit; taubin: Fit; geometric: Fit };
}

interface NistCase {
  readonly id: string;
  readonly points: [number, number][];
  readonly arcDegrees: number;
  readonly reference: { cx: number; cy: number; diameter: number };
  readonly computedRoundness?: {
    RONt_LSCI: number;
    RONt_MZCI: number;
    RONt_MCCI: number;
    RONt_MICI: number;
    mzRadii: [number, number];
    mccRadius: number;
    micRadius: number;
  };
}

const cases = (readGolden('circle_fits') as { cases: Partial<CircleCase>[] }).cases.filter(
  (each): each is CircleCase => each.points !== undefined,
);
const nist = (readGolden('nist_ats_circles') as { cases: NistCase[] }).cases;

function caseNamed(id: string): CircleCase {
  return cases.find((each) => each.id === id)!;
}

function expectCircle(found: Circle | null, expected: Fit, tolerance: number): void {
  expectWithin(found?.x, expected.cx, tolerance);
  expectWithin(found?.y, expected.cy, tolerance);
  expectWithin(found?.radius, expected.r, tolerance);
}

/** Taubin's fit in the points' own place and size. */
function taubin(points: ArrayLike<number>): Circle | null {
  const { x, y, scale, points: standard } = standardisePoints(points)!;
  const found = taubinCircle(standard);
  return found && { x: x + scale * found.x, y: y + scale * found.y, radius: scale * found.radius };
}

/** Kåsa's fit, the plainest algebraic one: the regression of x² + y² on x and y. What the product's fits are held against. */
function kasa(points: ArrayLike<number>): Circle {
  const { x, y, scale, points: p } = standardisePoints(points)!;
  const square = p.map((value, i) => (i % 2 === 0 ? value ** 2 + p[i + 1]! ** 2 : value));
  const { xx, xy, yy } = covariance2(p)!;
  const yz = covariance2(square)!.xy;
  const xz = covariance2(square.map((value, i) => (i % 2 === 0 ? value : p[i - 1]!)))!.xy;
  const determinant = 2 * (xx * yy - xy * xy);
  const a = (xz * yy - yz * xy) / determinant;
  const b = (yz * xx - xz * xy) / determinant;
  const middle = mean(square.filter((_, i) => i % 2 === 0));
  return { x: x + scale * a, y: y + scale * b, radius: scale * Math.sqrt(middle + a * a + b * b) };
}

describe('circle fits', () => {
  it('Gander, Golub, Strebel 1994: the geometric fit of six points to 1e-4 (memory; reproduced)', () => {
    const { points, published } = caseNamed('gander6');
    expectCircle(fitCircle(points.flat()), published!.geometric!, 1e-4);
  });

  it('Apache Commons Math: the geometric fit of a hand-traced circle to 1e-6 (seen)', () => {
    const { points, published } = caseNamed('trace87');
    expectCircle(fitCircle(points.flat()), published!.geometric!, 1e-6);
  });

  it("pcirc manual: Taubin's fit of a cross has radius 1.005 and centre 0 (seen)", () => {
    expectCircle(taubin(caseNamed('cross4').points.flat()), { cx: 0, cy: 0, r: 1.005 }, 5e-4);
  });

  it.each(cases)("$id: Taubin's and the geometric fit to 1e-8 (computed with SciPy)", ({ points, computed }) => {
    if (computed.kasa !== undefined) expectCircle(kasa(points.flat()), computed.kasa, 1e-8);
    expectCircle(taubin(points.flat()), computed.taubin, 1e-8);
    expectCircle(fitCircle(points.flat()), computed.geometric, 1e-8);
  });
});

describe('NIST Algorithm Testing System, least-squares circles (seen)', () => {
  it('has full circles, half and quarter arcs at hand', () => {
    expect(nist.length).toBeGreaterThanOrEqual(14);
    expect(nist.filter(({ arcDegrees }) => arcDegrees < 100).length).toBeGreaterThanOrEqual(3);
  });

  it.each(nist)('$id: centre and diameter to 1e-7, relative above 1', ({ points, reference }) => {
    const found = fitCircle(points.flat());
    const tolerance = 1e-7 * Math.max(1, reference.diameter);
    expectWithin(found?.x, reference.cx, tolerance);
    expectWithin(found?.y, reference.cy, tolerance);
    expectWithin(2 * (found?.radius ?? NaN), reference.diameter, tolerance);
  });

  it.each(nist.filter((each) => each.computedRoundness !== undefined))(
    '$id: roundness against the four reference circles (computed)',
    ({ points, reference, computedRoundness: expected }) => {
      const flat = points.flat();
      const found = roundness(flat)!;
      const radius = reference.diameter / 2;
      expectWithin(found.leastSquares, expected!.RONt_LSCI, 1e-9 * radius);
      expectWithin(found.minimumZone, expected!.RONt_MZCI, 1e-8 * radius);
      expectWithin(found.minimumCircumscribed, expected!.RONt_MCCI, 1e-9 * radius);
      expectWithin(found.maximumInscribed, expected!.RONt_MICI, 1e-8 * radius);
      expectWithin(minimumZone(flat)?.inner, expected!.mzRadii[0], 1e-8 * radius);
      expectWithin(minimumZone(flat)?.outer, expected!.mzRadii[1], 1e-8 * radius);
      expectWithin(enclosingCircle(flat)?.radius, expected!.mccRadius, 1e-9 * radius);
      expectWithin(maximumInscribed(flat)?.radius, expected!.micRadius, 1e-8 * radius);
    },
  );

  it('no half or quarter arc is drawn in as an algebraic fit draws it in (bias of the plainest one; computed)', () => {
    const arcs = nist.filter(({ arcDegrees }) => arcDegrees <= 180);
    expect(arcs.length).toBeGreaterThan(3);
    for (const { points } of arcs) {
      const flat = points.flat();
      expect(kasa(flat).radius).toBeLessThan(fitCircle(flat)!.radius);
    }
  });

  it('says nothing of the roundness of arcs that leave 90° open', () => {
    const arcs = nist.filter(({ arcDegrees }) => arcDegrees <= 270);
    expect(arcs.length).toBeGreaterThan(3);
    for (const { points } of arcs) expect(roundness(points.flat())).toBeNull();
  });
});
