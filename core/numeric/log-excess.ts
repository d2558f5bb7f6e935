/** Below this the logarithm loses digits to what is taken from it. */
const seriesLimit = 0.4;

/**
 * ln(ratio) − off, with ratio = 1 + off above 0: how far the logarithm falls short of its tangent at 1, to full relative precision.
 * Both are handed in, for each keeps digits that the other loses. With r = off/(2 + off) it is −off·r + 2r³(1/3 + r²/5 + r⁴/7 + …).
 * Source: DLMF 4.6.4.
 */
export function logExcess(ratio: number, off: number): number {
  if (off < -0.5) return Math.log(ratio) - off;
  if (!(Math.abs(off) < seriesLimit)) return Math.log1p(off) - off;
  const r = off / (2 + off);
  const square = r * r;
  let sum = 0;
  for (let k = 27; k >= 3; k -= 2) sum = 1 / k + square * sum;
  return 2 * r * square * sum - off * r;
}
