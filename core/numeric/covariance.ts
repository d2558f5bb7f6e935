/** Symmetric 2 × 2 matrix: variances and covariance of pairs (x, y). */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Sample covariance of pairs, Σ(x − x̄)(y − ȳ)/(n − 1) and the two variances, in squared units of the values.
 * `points` is flat: x0, y0, x1, y1 … Null with fewer than two pairs.
 * Two passes; what the residuals do not cancel to corrects the rounding of the means, as in `variance`.
 */
export function covariance2(points: ArrayLike<number>): Covariance | null {
  const n = Math.floor(points.length / 2);
  if (n < 2) return null;
  let xSum = 0;
  let ySum = 0;
  for (let i = 0; i < 2 * n; i += 2) {
    xSum += points[i] ?? NaN;
    ySum += points[i + 1] ?? NaN;
  }
  const xMean = xSum / n;
  const yMean = ySum / n;
  let x = 0;
  let y = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < 2 * n; i += 2) {
    const dx = (points[i] ?? NaN) - xMean;
    const dy = (points[i + 1] ?? NaN) - yMean;
    x += dx;
    y += dy;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const each = (squares: number, left: number): number => (squares - left / n) / (n - 1);
  // Of equal values rounding may leave a square below 0.
  return { xx: Math.max(0, each(xx, x * x)), xy: each(xy, x * y), yy: Math.max(0, each(yy, y * y)) };
}
