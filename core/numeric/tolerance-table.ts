/**
 * n, c(n) and the standard error of the Monte Carlo behind it: 100,000 draws, seed 20261125 + n, content 0.99, confidence
 * 0.95. Made by tests/long/tolerance-table.ts; a test computes some of it again with another seed.
 */
export const toleranceTable: readonly (readonly [n: number, c: number, standardError: number])[] = [
  [12, 5.3757, 0.0233],
  [24, 4.1729, 0.0084],
  [200, 3.2677, 0.0019],
];
