import { gammaTail } from './gamma-tail.ts';

/** Terms that change the last digit no more are left out. */
const small = 1e-17;

/**
 * Probability that a reading lies farther than `radius` from a point when it scatters normally with `sigma` on each axis about a
 * mean that is `offset` away: Marcum's Q₁(offset/σ, radius/σ); for offset 0 Rayleigh's exp(−radius²/2σ²). All in one unit.
 * NaN for negative arguments or sigma not above 0.
 * The mixture Σ Poisson(k; offset²/2σ²) · P(χ² with 2k + 2 degrees > radius²/σ²) is summed outwards from its largest weight; all terms are
 * positive, so that small probabilities keep their digits.
 */
export function riceExceedance(offset: number, radius: number, sigma: number): number {
  if (!(offset >= 0 && radius >= 0 && sigma > 0)) return NaN;
  const rate = (offset / sigma) ** 2 / 2;
  const level = (radius / sigma) ** 2 / 2;
  const start = Math.floor(rate);
  let weights = 0;
  let sum = 0;
  const add = (k: number, weight: number): boolean => {
    const term = weight * gammaTail(k + 1, level);
    weights += weight;
    sum += term;
    return weight > small * weights || weight > small * sum;
  };
  for (let k = start, weight = 1; add(k, weight); k += 1) weight *= rate / (k + 1);
  for (let k = start, weight = 1; k > 0; k -= 1) {
    weight *= k / rate;
    if (!add(k - 1, weight)) break;
  }
  // The weights were taken relative to the largest; over all k they are 1.
  return sum / weights;
}
