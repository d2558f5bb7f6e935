/** How far the rest points taken so far lie apart, in words. */
import { count } from '../../core/plot/number-text.ts';
import type { Pair } from '../../core/pad/stick.ts';

/** Greatest less least rest point per axis in whole counts. */
export function restSpread(rests: readonly Pair[]): string {
  if (rests.length < 2) return 'each release shows where the stick comes to rest';
  const xs = rests.map((rest) => rest.x);
  const ys = rests.map((rest) => rest.y);
  return `rest points lie within ${apart(xs)} counts in x, ${apart(ys)} in y`;
}

function apart(values: readonly number[]): string {
  return count(Math.round(Math.max(...values) - Math.min(...values)));
}
