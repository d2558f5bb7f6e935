import { conicEllipse, type Ellipse } from './conic-ellipse.ts';
import { dot, greatestEigenvector, type Matrix, type Triple } from './greatest-eigenvector.ts';
import { standardisePoints } from './points.ts';

/** Beyond this many times the points' own size an ellipse is a parabola or a pair of lines. */
const flat = 1e6;

/**
 * Direct least-squares ellipse: the conic Ax² + Bxy + Cy² + Dx + Ey + F = 0 with the least Σ(its value at the points)² under
 * 4AC − B² = 1, so that it is always an ellipse. No iteration, no start; pulled inwards on short arcs like every algebraic fit.
 * Null where the points do not fix one: fewer than five distinct ones, or all on a line, two lines or a parabola.
 * Source: Fitzgibbon, Pilu, Fisher, IEEE PAMI 21 (1999) 476, in the split form of Halíř and Flusser (WSCG 1998), on points
 * centred and scaled first.
 */
export function fitEllipse(points: ArrayLike<number>): Ellipse | null {
  const standard = standardisePoints(points);
  if (standard === null || countDistinct(standard.points) < 5) return null;
  const sums = sumProducts(standard.points);
  if (sums === null) return null;
  const quadratic = greatestEigenvector(sums.reduced);
  if (quadratic === null) return null;
  const [A, B, C] = quadratic;
  const [d, e, f] = sums.linear;
  const found = conicEllipse(A, B, C, dot(d, quadratic), dot(e, quadratic), dot(f, quadratic));
  if (found === null || found.a > flat) return null;
  const { x, y, scale } = standard;
  return {
    x: x + scale * found.x,
    y: y + scale * found.y,
    a: scale * found.a,
    b: scale * found.b,
    angle: found.angle,
  };
}

/** Five are enough to know: counting stops there. */
function countDistinct(points: Float64Array): number {
  const seen: [number, number][] = [];
  for (let i = 0; i < points.length && seen.length < 5; i += 2) {
    const x = points[i] ?? NaN;
    const y = points[i + 1] ?? NaN;
    if (!seen.some((p) => p[0] === x && p[1] === y)) seen.push([x, y]);
  }
  return seen.length;
}

/**
 * The scatter of (x², xy, y²) left when (x, y, 1) has explained its part, multiplied from the left by the inverse of the constraint;
 * and the rows that give D, E, F from A, B, C. The mean is at the origin, so (x, y) and 1 separate.
 */
function sumProducts(points: Float64Array): { reduced: Matrix; linear: Matrix } | null {
  const n = points.length / 2;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xxx = 0;
  let xxy = 0;
  let xyy = 0;
  let yyy = 0;
  for (let i = 0; i < n; i += 1) {
    const x = points[2 * i] ?? NaN;
    const y = points[2 * i + 1] ?? NaN;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xxx += x * x * x;
    xxy += x * x * y;
    xyy += x * y * y;
    yyy += y * y * y;
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-14 * (xx + yy) ** 2)) return null;
  const d: Triple = [
    (xy * xxy - yy * xxx) / determinant,
    (xy * xyy - yy * xxy) / determinant,
    (xy * yyy - yy * xyy) / determinant,
  ];
  const e: Triple = [
    (xy * xxx - xx * xxy) / determinant,
    (xy * xxy - xx * xyy) / determinant,
    (xy * xyy - xx * yyy) / determinant,
  ];
  const f: Triple = [-xx / n, -xy / n, -yy / n];
  let s11 = 0;
  let s12 = 0;
  let s13 = 0;
  let s23 = 0;
  let s22 = 0;
  let s33 = 0;
  // Summed as squares of what is left, not as a difference of two large sums: exact ellipses then stay exact.
  for (let i = 0; i < n; i += 1) {
    const x = points[2 * i] ?? NaN;
    const y = points[2 * i + 1] ?? NaN;
    const p = x * x + d[0] * x + e[0] * y + f[0];
    const q = x * y + d[1] * x + e[1] * y + f[1];
    const r = y * y + d[2] * x + e[2] * y + f[2];
    s11 += p * p;
    s12 += p * q;
    s13 += p * r;
    s22 += q * q;
    s23 += q * r;
    s33 += r * r;
  }
  return {
    reduced: [
      [s13 / 2 / n, s23 / 2 / n, s33 / 2 / n],
      [-s12 / n, -s22 / n, -s23 / n],
      [s11 / 2 / n, s12 / 2 / n, s13 / 2 / n],
    ],
    linear: [d, e, f],
  };
}
