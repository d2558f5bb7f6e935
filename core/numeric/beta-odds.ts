import { betaShare, betaSlope } from './beta-share.ts';

/** Newton's rule doubles the digits of each step: after one this small there is nothing left but rounding. */
const lastStep = 1e-8;

/**
 * Where a beta variable with shapes `a` and `b` stays below with probability `p` and not with q = 1 − p, as the odds x/(1 − x): both x and
 * 1 − x come from them to the last digits, and from the smaller of p and q so does the answer. For p, q, a, b above 0.
 * Newton's rule on ln I over ln(x/(1 − x)), which rises and bends downwards (both are log-concave), kept within a bracket: a step that
 * leaves it, or does not halve the one before, is replaced by halving the bracket.
 */
export function betaOdds(p: number, q: number, a: number, b: number): number {
  if (p > q) return 1 / betaOdds(q, p, b, a);
  let low = Number.MIN_VALUE;
  let high = Number.MAX_VALUE;
  let odds = a / b;
  let before = Infinity;
  for (;;) {
    const [x, y] = [odds / (1 + odds), 1 / (1 + odds)];
    const share = betaShare(x, y, a, b);
    const short = Math.log(p / share);
    const step = (short * share) / betaSlope(x, y, a, b);
    if (short > 0) low = odds;
    else high = odds;
    if (Math.abs(step) < lastStep && Math.abs(step) > before / 4) return odds;
    const newton = odds * Math.exp(step);
    const good = newton > low && newton < high && Math.abs(step) <= before / 2;
    const next = good ? newton : Math.sqrt(low) * Math.sqrt(high);
    if (next <= low || next >= high || next === odds) return odds;
    before = good ? Math.abs(step) : Infinity;
    odds = next;
  }
}
