import { gammaTail } from './gamma-tail.ts';
import { bisectRising } from './bisect.ts';
import { normalCdf } from './normal-cdf.ts';

/** Step of the integral over the mean's place, in its own standard deviations; the sum over equal steps is exact to rounding. */
const step = 0.125;
const steps = 72;

/**
 * Two-sided tolerance factor k of one axis: x̄ ± k·s holds at least the share `content` of a normal distribution with the given
 * `confidence`, x̄ and s from `n` draws. Exact: with the mean off by z/√n the half-width that holds the content is r, Φ(z/√n + r) −
 * Φ(z/√n − r) = content, and k·s ≥ r has the probability P(χ² ≥ (n − 1)r²/k²); k is where the mean of that over z is the confidence.
 * Null for n below 2 or shares outside (0, 1).
 * Source: ISO 16269-6 (exact method; from memory); Odeh and Owen's integral.
 */
export function oneAxisToleranceFactor(n: number, content: number, confidence: number): number | null {
  const isShare = (p: number): boolean => p > 0 && p < 1;
  if (!Number.isInteger(n) || n < 2 || !isShare(content) || !isShare(confidence)) return null;
  const degrees = n - 1;
  const places = Array.from({ length: steps }, (_, i) => {
    const z = i * step;
    const density = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * step;
    // Both signs of z at once.
    return { weight: i === 0 ? density : 2 * density, half: halfWidth(z / Math.sqrt(n), content) };
  });
  const confidenceOf = (k: number): number =>
    places.reduce(
      (sum, { weight, half }) => sum + weight * gammaTail(degrees / 2, (degrees * half * half) / (2 * k * k)),
      0,
    );
  let high = 10;
  while (confidenceOf(high) < confidence) high *= 2;
  return bisectRising((k) => confidenceOf(k) - confidence, 0, high);
}

/** Half the width of the interval about `off` that holds the content of the standard normal. */
function halfWidth(off: number, content: number): number {
  return bisectRising((r) => normalCdf(off + r) - normalCdf(off - r) - content, 0, off + 40);
}
