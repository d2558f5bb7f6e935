/** Tells from the dwells of a warm-up so far whether the rest still drifts, as `measure` will tell it of the log. */
import type { TimedRest, WarmUpJudgement } from '../../core/capture/warm-up-guide.ts';
import { axisDrift } from '../../core/measure/axis-drift.ts';
import type { StickFields } from '../../core/pad/stick.ts';

/** The last third of the dwells, so many at least. */
const LAST_DWELLS = 8;

export function judgeWarmUp(dwells: readonly TimedRest[], fields: StickFields): WarmUpJudgement {
  if (dwells.length < LAST_DWELLS) return { drift: null, steady: null };
  const last = dwells.slice(-Math.max(LAST_DWELLS, Math.ceil(dwells.length / 3)));
  const seconds = last.map(({ startUs, endUs }) => (startUs + endUs) / 2e6);
  const x = axisDrift(
    seconds,
    last.map(({ point }) => fields.x.up * point.x),
  );
  const y = axisDrift(
    seconds,
    last.map(({ point }) => fields.y.up * point.y),
  );
  if (x === null || y === null) return { drift: null, steady: null };
  return { drift: { x: x.slope, y: y.slope }, steady: !x.significant && !y.significant };
}
