import { betaShare } from './beta-share.ts';

/**
 * Probability that an F variable with `above` and `below` degrees of freedom (numerator, denominator) exceeds `f`.
 * NaN for f below 0 or degrees not above 0. Source: DLMF 8.17, Abramowitz and Stegun 26.6.2.
 */
export function fTail(f: number, above: number, below: number): number {
  if (!(f >= 0 && above > 0 && below > 0)) return NaN;
  if (f === Infinity) return 0;
  const whole = below + above * f;
  return betaShare(below / whole, (above * f) / whole, below / 2, above / 2);
}
