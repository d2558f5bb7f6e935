/** The factor of the bivariate tolerance region of releases. */
import { toleranceTable } from './tolerance-table.ts';

/** √ of the 0.99 quantile of chi-square with 2 degrees of freedom, −2 ln 0.01: the factor when nothing is left to chance. */
const LIMIT = Math.sqrt(-2 * Math.log(0.01));

/**
 * c(n) such that (u − ū)ᵀS⁻¹(u − ū) ≤ c² holds 99 % of a bivariate normal distribution with 95 % confidence, ū and S being
 * mean and covariance (n − 1) of n draws. About 5.4 for 12 and 4.2 for 24. Between the table's n it is interpolated in 1/√n,
 * in which it is nearly straight (0.001 off at most), down to √χ²₂,₀.₉₉ = 3.035 for endless n. Null below 12, for which no statement is made.
 */
export function toleranceFactor(n: number): number | null {
  const [first] = toleranceTable;
  if (first === undefined || !Number.isFinite(n) || n < first[0]) return null;
  const at = 1 / Math.sqrt(n);
  let [fromN, fromC] = first;
  for (const [toN, toC] of toleranceTable) {
    if (n <= toN) return between(1 / Math.sqrt(fromN), fromC, 1 / Math.sqrt(toN), toC, at);
    fromN = toN;
    fromC = toC;
  }
  return between(1 / Math.sqrt(fromN), fromC, 0, LIMIT, at);
}

function between(x0: number, y0: number, x1: number, y1: number, x: number): number {
  return x0 === x1 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
