import { mean } from './mean.ts';

/** Symmetric 2 × 2 matrix: variances and covariance of pairs (x, y). */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Sample covariance of pairs, Σ(x − x̄)(y − ȳ)/(n − 1) and the two variances, in squared units of the values.
 * `points` is flat: x0, y0, x1, y1 … Null with fewer than two pairs.
 */
export function covariance2(points: ArrayLike<number>): Covariance | null {
  const n = Math.floor(points.length / 2);
  if (n < 2) return null;
  const xs = new Float64Array(n);
  const ys = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    xs[i] = points[2 * i] ?? NaN;
    ys[i] = points[2 * i + 1] ?? NaN;
  }
  const xMean = mean(xs);
  const yMean = mean(ys);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = (xs[i] ?? NaN) - xMean;
    const dy = (ys[i] ?? NaN) - yMean;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return { xx: xx / (n - 1), xy: xy / (n - 1), yy: yy / (n - 1) };
}
