/** Pass, fail or cannot say, by guard bands. */
import type { Decision } from './finding.ts';

/**
 * A value with its expanded uncertainty U (95 %) against an upper limit: guarded acceptance, pass where value + U < limit;
 * guarded rejection, fail where value − U > limit; in between, or where either number is missing, it cannot be said. Either
 * way the risk of a wrong answer at the limit is 2.5 % at most. Source: JCGM 106:2012, 8.3.2 and 8.3.3, with w = U.
 */
export function decide(value: number | null, u95: number | null, limit: number): Decision {
  if (value === null || u95 === null || !Number.isFinite(value) || !Number.isFinite(u95)) return 'cannot say';
  if (value + u95 < limit) return 'pass';
  return value - u95 > limit ? 'fail' : 'cannot say';
}
