import betainc from '@stdlib/math-base-special-betainc';

/**
 * Probability that an F variable with `above` and `below` degrees of freedom (numerator, denominator) exceeds `f`.
 * NaN for f below 0 or degrees not above 0. Source: regularised incomplete beta function of @stdlib.
 */
export function fTail(f: number, above: number, below: number): number {
  if (!(f >= 0 && above > 0 && below > 0)) return NaN;
  return betainc(below / (below + above * f), below / 2, above / 2, true, false);
}
