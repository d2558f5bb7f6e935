import { logExcess } from './log-excess.ts';
import { stirlingRemainder } from './stirling-remainder.ts';

/** Terms of the fraction grow with the root of the larger shape; far more than any in use needs. */
const termLimit = 100_000;

/**
 * xᵃyᵇ/B(a, b) with y = 1 − x, for x and y within (0, 1) and a, b above 0: the slope of `betaShare` over ln(x/y).
 * Both x and y are handed in, so that the smaller keeps its digits. Source: the saddle point of C. Loader, Fast and accurate computation
 * of binomial probabilities (2000): large powers are cancelled before anything is rounded.
 */
export function betaSlope(x: number, y: number, a: number, b: number): number {
  const off = x * b - y * a;
  const powers = a * logExcess(x * (1 + b / a), off / a) + b * logExcess(y * (1 + a / b), -off / b);
  const remainder = stirlingRemainder(a + b) - stirlingRemainder(a) - stirlingRemainder(b);
  return Math.sqrt(((a / (a + b)) * b) / (2 * Math.PI)) * Math.exp(powers + remainder);
}

/**
 * Regularised incomplete beta function I(a, b) at x, y = 1 − x: the probability that a beta variable with shapes a and b stays below x.
 * To about 14 digits, small probabilities too. NaN for x or y outside [0, 1] or shapes not above 0.
 * Source: the continued fraction of DiDonato and Morris, ACM Trans. Math. Softw. 18 (1992) 360, equation 9; DLMF 8.17.4 for the other side.
 */
export function betaShare(x: number, y: number, a: number, b: number): number {
  if (!(x >= 0 && y >= 0 && a > 0 && b > 0)) return NaN;
  if (x === 0) return 0;
  if (y === 0) return 1;
  const slope = betaSlope(x, y, a, b);
  return x * (b + 1) <= y * (a + 1) ? slope / fraction(x, y, a, b) : 1 - slope / fraction(y, x, b, a);
}

/** By Lentz's rule, from the top. */
function fraction(x: number, y: number, a: number, b: number): number {
  const lead = a * y - b * x + 1;
  let whole = (a / (a + 1)) * lead;
  let c = whole;
  let d = 0;
  for (let n = 1; n < termLimit; n += 1) {
    const middle = a + 2 * n - 1;
    const above = ((a + n - 1) / middle) * ((a + b + n - 1) / middle) * n * (b - n) * x * x;
    const below = n + (n * (b - n) * x) / middle + ((a + n) / (middle + 2)) * (lead + n * (1 + y));
    d = 1 / (below + above * d);
    c = below + above / c;
    whole *= c * d;
    if (Math.abs(c * d - 1) < 2 ** -52) break;
  }
  return whole;
}
