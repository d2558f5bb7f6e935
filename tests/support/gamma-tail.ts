import { logExcess } from '../../core/numeric/log-excess.ts';
import { stirlingRemainder } from '../../core/numeric/stirling-remainder.ts';

/** Terms of either expansion grow with √a; far more than any a in use needs. */
const termLimit = 100_000;

/**
 * Upper regularised incomplete gamma function Q(a, x) = Γ(a, x)/Γ(a): the probability that a chi-square variable with 2a degrees of freedom
 * exceeds 2x, and that a Poisson variable with mean x stays below a whole number a. For a > 0, x ≥ 0; NaN else.
 * The series of 1 − Q below x = a + 1, the continued fraction (Lentz) above, both times xᵃe⁻ˣ/Γ(a) from its saddle point: small
 * probabilities keep their digits, about 13 of them.
 * Source: DLMF 8.7.1 and 8.9.2; C. Loader, Fast and accurate computation of binomial probabilities (2000).
 */
export function gammaTail(a: number, x: number): number {
  if (!(a > 0 && x >= 0)) return NaN;
  if (x === 0) return 1;
  if (x === Infinity) return 0;
  const scale = Math.sqrt(a / (2 * Math.PI)) * Math.exp(a * logExcess(x / a, (x - a) / a) - stirlingRemainder(a));
  return x < a + 1 ? 1 - scale * lowerSeries(a, x) : scale * upperFraction(a, x);
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < termLimit && term > sum * 1e-17; k += 1) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let d = 1 / b;
  let c = Infinity;
  let fraction = d;
  for (let k = 1; k < termLimit; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return fraction;
}
