import erfc from '@stdlib/math-base-special-erfc';

/** Probability that a standard normal variable is at most `x`, to full relative precision in the lower tail. Source: erfc of @stdlib. */
export function normalCdf(x: number): number {
  return erfc(-x * Math.SQRT1_2) / 2;
}
