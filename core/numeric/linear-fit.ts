import { mean } from './mean.ts';

/** Straight line y = intercept + slope·x with what it leaves over. */
export interface LinearFit {
  readonly slope: number;
  readonly intercept: number;
  /** Standard errors; null where n = 2 leaves no degree of freedom. */
  readonly slopeError: number | null;
  readonly interceptError: number | null;
  /** √(Σ residual² / (n − 2)); null with n = 2. */
  readonly residualDeviation: number | null;
  /** n − 2. */
  readonly degrees: number;
}

/**
 * Ordinary least squares of y on x, both centred on their means first; slope in units of y per unit of x.
 * Standard errors are those of independent residuals with equal variance. Null with fewer than two points, columns of
 * unequal length, or where all x are equal.
 * Definition: NIST/SEMATECH e-Handbook 4.4.3.1; checked against NIST StRD Norris.
 */
export function linearFit(x: ArrayLike<number>, y: ArrayLike<number>): LinearFit | null {
  const n = x.length;
  if (n < 2 || y.length !== n) return null;
  const xMean = mean(x);
  const yMean = mean(y);
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = (x[i] ?? NaN) - xMean;
    xx += dx * dx;
    xy += dx * ((y[i] ?? NaN) - yMean);
  }
  if (!(xx > 0)) return null;
  const slope = xy / xx;
  const intercept = yMean - slope * xMean;
  const degrees = n - 2;
  if (degrees === 0) {
    return { slope, intercept, slopeError: null, interceptError: null, residualDeviation: null, degrees };
  }
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const residual = (y[i] ?? NaN) - yMean - slope * ((x[i] ?? NaN) - xMean);
    squares += residual * residual;
  }
  const residualDeviation = Math.sqrt(squares / degrees);
  return {
    slope,
    intercept,
    slopeError: residualDeviation / Math.sqrt(xx),
    interceptError: residualDeviation * Math.sqrt(1 / n + (xMean * xMean) / xx),
    residualDeviation,
    degrees,
  };
}
