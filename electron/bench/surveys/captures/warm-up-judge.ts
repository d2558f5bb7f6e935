/** Tells from the dwells of a warm-up so far whether the rest still drifts, as `measure` will tell it of the log. */
import type { TimedRest, WarmUpJudgement } from '../../../../core/capture/guide/warm-up-guide.ts';
import { lastDrift } from '../../../../core/measure/warm-up.ts';
import type { StickFields } from '../../../../core/pad/stick.ts';

export function judgeWarmUp(dwells: readonly TimedRest[], fields: StickFields): WarmUpJudgement {
  const last = lastDrift(dwells, fields);
  if (last === null) return { drift: null, steady: null };
  const { x, y, u95 } = last;
  return { drift: { x, y }, steady: Math.abs(x) <= u95.x && Math.abs(y) <= u95.y };
}
