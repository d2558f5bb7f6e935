/** The selected sample, marked over a plane: a ring in the plane and, where it lies inside, in the magnified rest. */
import type { Pair } from '../pad/stick.ts';
import type { Mark } from './figure.ts';
import { dot } from './marks.ts';
import type { PlaneFigure } from './plane-figure.ts';

/** `at`: raw counts as reported. */
export function planeSample({ x, y, inset }: PlaneFigure, at: Pair, letter: number): Mark[] {
  const ring = (px: number, py: number): Mark => dot('sample', null, px, py, letter * 0.42);
  const marks = [ring(x.at(at.x), y.at(at.y))];
  if (inset === null) return marks;
  const [px, py] = [inset.x.at(at.x), inset.y.at(at.y)];
  const { box } = inset;
  const isInside = px >= box.x && px <= box.x + box.width && py >= box.y && py <= box.y + box.height;
  return isInside ? [...marks, ring(px, py)] : marks;
}

/** Place among `rests` of the one whose dot in the magnified rest lies nearest to a picture point, at most a letter away; null without. */
export function restAt(
  { inset }: PlaneFigure,
  rests: readonly Pair[],
  px: number,
  py: number,
  letter: number,
): number | null {
  if (inset === null) return null;
  let best: number | null = null;
  let least = letter;
  for (const [index, rest] of rests.entries()) {
    const away = Math.hypot(inset.x.at(rest.x) - px, inset.y.at(rest.y) - py);
    if (away > least) continue;
    least = away;
    best = index;
  }
  return best;
}
