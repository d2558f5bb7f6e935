import { gammaTail } from './gamma-tail.ts';

/** Probability that a standard normal variable is at most `x`, to full relative precision in the lower tail. Source: DLMF 7.11.2. */
export function normalCdf(x: number): number {
  const outside = gammaTail(0.5, (x * x) / 2) / 2;
  return x < 0 ? outside : 1 - outside;
}
