/** SciPy as an independent judge on seeded random data, where the definition is the same. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { convexHull } from '../../core/geometry/convex-hull.ts';
import { fitCircle } from '../../core/geometry/fit-circle.ts';
import { fitEllipse } from '../../core/geometry/fit-ellipse.ts';
import { betaQuantile } from '../../core/numeric/beta-quantile.ts';
import { covariance2 } from '../../core/numeric/covariance.ts';
import { fTail } from '../../core/numeric/f-tail.ts';
import { gammaTail } from '../support/gamma-tail.ts';
import { linearFit } from '../../core/numeric/linear-fit.ts';
import { mean } from '../../core/numeric/mean.ts';
import { normalCdf } from '../support/normal-cdf.ts';
import { quantile } from '../../core/numeric/quantile.ts';
import { createRandom } from '../../core/numeric/random.ts';
import { studentT } from '../../core/numeric/student-t.ts';
import { standardDeviation } from '../../core/numeric/variance.ts';
import { expectRelative, expectWithin } from '../support/expect-close.ts';

interface Answers {
  readonly means: number[];
  readonly deviations: number[];
  readonly quantiles: number[][];
  readonly covariances: [number, number, number][];
  readonly hullAreas: number[];
  readonly fTail: number[];
  readonly fits: [number, number, number, number][];
  readonly circles: [number, number, number][];
  readonly ellipses: [number, number, number, number, number][];
  readonly t: number[];
  readonly beta: number[];
  readonly gammaTail: number[];
  readonly normal: number[];
}

const random = createRandom(20_261_126);

function between(low: number, high: number): number {
  return low + (high - low) * random.next();
}

function times<T>(count: number, make: () => T): T[] {
  return Array.from({ length: count }, make);
}

/** Values about a middle, both of any size. */
function column(count: number): number[] {
  const middle = between(-4000, 4000);
  const spread = 10 ** between(-2, 3);
  return times(count, () => middle + spread * random.normal());
}

/** Points about an ellipse anywhere, from a third of the way round to all of it, with noise. */
function ring(): number[] {
  const [x, y] = [between(-4000, 4000), between(-4000, 4000)];
  const a = 10 ** between(0, 3);
  const [b, turn, arc] = [a * between(0.5, 0.95), between(0, Math.PI), between(2 / 3, 2) * Math.PI];
  return times(random.integer(20, 300), () => {
    const angle = arc * random.next();
    const u = a * Math.cos(angle) + 0.01 * a * random.normal();
    const v = b * Math.sin(angle) + 0.01 * a * random.normal();
    return [x + u * Math.cos(turn) - v * Math.sin(turn), y + u * Math.sin(turn) + v * Math.cos(turn)];
  }).flat();
}

const shares = times(200, () => [between(1e-4, 1 - 1e-4), 10 ** between(0, 4)] as const);

const questions = {
  columns: times(20, () => column(random.integer(2, 200))),
  shares: [0, 0.01, 0.25, 0.5, 0.77, 0.95, 1],
  clouds: times(20, () => column(2 * random.integer(3, 100))),
  fits: times(20, () => {
    const x = column(random.integer(3, 100));
    const slope = between(-5, 5);
    return { x, y: x.map((value) => 12 + slope * value + random.normal()) };
  }),
  rings: times(40, ring),
  t: shares.map(([p, degrees]) => [studentT(p, degrees), degrees] as const),
  beta: times(200, () => [between(0.001, 0.999), 10 ** between(-0.3, 3), 10 ** between(-0.3, 3)] as const),
  gammaTail: times(200, () => {
    const a = 10 ** between(-0.3, 3.5);
    return [a, a * between(0.5, 1.5)] as const;
  }),
  fTail: times(100, () => [10 ** between(-1, 1.5), random.integer(1, 40), random.integer(1, 200)] as const),
  normal: times(50, () => between(-12, 8)),
};

/** Of a polygon, seen from its first corner. */
function areaOf(corners: Float64Array): number {
  const [x = NaN, y = NaN] = corners;
  let twice = 0;
  for (let i = 2; i + 3 < corners.length; i += 2) {
    twice += (corners[i]! - x) * (corners[i + 3]! - y) - (corners[i + 2]! - x) * (corners[i + 1]! - y);
  }
  return twice / 2;
}

const interpreter = '/usr/bin/python3';
const hasSciPy = spawnSync(interpreter, ['-c', 'import scipy.stats']).status === 0;
if (!hasSciPy) console.warn('Skipped the comparison with SciPy: install it with apt-get install python3-scipy.');

/** One process answers all; a beat longer than the others, so asked once. */
function ask(): Answers {
  const script = path.join(import.meta.dirname, 'answer_with_scipy.py');
  const run = spawnSync(interpreter, [script], {
    input: JSON.stringify(questions),
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  expect(run.status, run.stderr).toBe(0);
  return JSON.parse(run.stdout) as Answers;
}

describe.skipIf(!hasSciPy)(
  `SciPy on seeded random data${hasSciPy ? '' : ': SKIPPED, python3-scipy is not installed'}`,
  () => {
    const answers = hasSciPy ? ask() : null;

    it('agrees on means and sample deviations', () => {
      for (const [i, values] of questions.columns.entries()) {
        expectRelative(mean(values), answers!.means[i]!, 1e-12);
        expectRelative(standardDeviation(values), answers!.deviations[i]!, 1e-9);
      }
    });

    it('agrees on quantiles of definition 7', () => {
      for (const [i, values] of questions.columns.entries()) {
        const size = Math.max(...values.map(Math.abs));
        for (const [k, p] of questions.shares.entries()) {
          expectWithin(quantile(values, p), answers!.quantiles[i]![k]!, 1e-12 * size);
        }
      }
    });

    it('agrees on covariances', () => {
      for (const [i, points] of questions.clouds.entries()) {
        const { xx, xy, yy } = covariance2(points)!;
        const [expectedXx, expectedXy, expectedYy] = answers!.covariances[i]!;
        expectRelative(xx, expectedXx, 1e-9);
        expectRelative(yy, expectedYy, 1e-9);
        expectWithin(xy, expectedXy, 1e-9 * Math.sqrt(expectedXx * expectedYy));
      }
    });

    it('agrees on the area of convex hulls', () => {
      for (const [i, points] of questions.clouds.entries()) {
        expectRelative(areaOf(convexHull(points)), answers!.hullAreas[i]!, 1e-9);
      }
    });

    it('agrees on tails of F to 1e-9', () => {
      for (const [i, [f, above, below]] of questions.fTail.entries()) {
        expectRelative(fTail(f, above, below), answers!.fTail[i]!, 1e-9);
      }
    });

    it('agrees on lines and their standard errors to 1e-9', () => {
      for (const [i, { x, y }] of questions.fits.entries()) {
        const fit = linearFit(x, y)!;
        const [slope, intercept, slopeError, interceptError] = answers!.fits[i]!;
        expectRelative(fit.slope, slope, 1e-9);
        expectRelative(fit.intercept, intercept, 1e-9);
        expectRelative(fit.slopeError!, slopeError, 1e-9);
        expectRelative(fit.interceptError!, interceptError, 1e-9);
      }
    });

    it('agrees on geometric circles to 1e-9 of their size', () => {
      for (const [i, points] of questions.rings.entries()) {
        const circle = fitCircle(points)!;
        const [x, y, radius] = answers!.circles[i]!;
        expectWithin(circle.x, x, 1e-9 * radius);
        expectWithin(circle.y, y, 1e-9 * radius);
        expectRelative(circle.radius, radius, 1e-9);
      }
    });

    it('agrees on direct ellipses to 1e-9 of their size', () => {
      for (const [i, points] of questions.rings.entries()) {
        const ellipse = fitEllipse(points)!;
        const [x, y, a, b, degrees] = answers!.ellipses[i]!;
        expectWithin(ellipse.x, x, 1e-9 * a);
        expectWithin(ellipse.y, y, 1e-9 * a);
        expectRelative(ellipse.a, a, 1e-9);
        expectRelative(ellipse.b, b, 1e-9);
        const apart = Math.abs(ellipse.angle - degrees);
        expectWithin(Math.min(apart, 180 - apart), 0, 1e-7);
      }
    });

    it('agrees on quantiles of t and beta to 1e-9', () => {
      for (const [i, [p]] of shares.entries()) expectRelative(answers!.t[i], p, 1e-9);
      for (const [i, [p, a, b]] of questions.beta.entries()) {
        expectRelative(betaQuantile(p, a, b), answers!.beta[i]!, 1e-9);
      }
    });

    it('agrees on the incomplete gamma function and the normal distribution to 1e-9', () => {
      for (const [i, [a, x]] of questions.gammaTail.entries()) {
        expectRelative(gammaTail(a, x), answers!.gammaTail[i]!, 1e-9);
      }
      for (const [i, x] of questions.normal.entries()) expectRelative(normalCdf(x), answers!.normal[i]!, 1e-9);
    });
  },
);
