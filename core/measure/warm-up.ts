/** Measures the drift of the rest after soldering. */
import { markedDwells, marksOf, repeatsOf, withoutRepeated } from '../capture/evidence/capture-marks.ts';
import { describeDwell } from '../capture/evidence/describe-dwell.ts';
import { effectiveSteps } from '../capture/evidence/effective-step.ts';
import type { Dwell } from '../capture/evidence/evidence.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import { findStillSpans } from '../capture/evidence/still-spans.ts';
import type { Track } from '../capture/evidence/track.ts';
import type { Pair, StickFields, StickId } from '../pad/stick.ts';
import { axisDrift } from './axis-drift.ts';
import type { WarmUpMeasure } from './warm-up-measure.ts';

/** The last third of the dwells, so many at least. */
const LAST_DWELLS = 8;

/**
 * Over the stretches marked `warmUp`: least-squares slope of the rest points over time, counts per second with y up, each axis
 * for itself, with U at 95 %; over all dwells and over the last third. Steady where the slope of that third is not told from
 * zero on either axis. Null without such a stretch or with fewer than three dwells in it.
 */
export function measureWarmUp(track: Track, stick: StickId): WarmUpMeasure | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const marks = marksOf(track.marks, stick);
  const dwells = warmUpSpans(track, stick).flatMap((times) => {
    const span = { purpose: 'rest', ...times } as const;
    const marked = markedDwells(marks, span);
    const stills = marked.length > 0 ? marked : findStillSpans(readings, span.startUs, span.endUs, track.gaps);
    const kept = withoutRepeated(stills, repeatsOf(marks, 'release', span), ({ endUs }) => endUs);
    return kept.map((still) => describeDwell(readings, still)).filter(({ point }) => !Number.isNaN(point.x));
  });
  const step = effectiveSteps(readings);
  const drift = driftOf(dwells, readings.fields, step);
  const [first, latest] = [dwells[0], dwells.at(-1)];
  if (drift === null || first === undefined || latest === undefined) return null;
  const last = lastDrift(dwells, readings.fields, step);
  const { x, y, u95 } = last ?? drift;
  return {
    dwells: dwells.length,
    drift,
    last,
    steady: last === null ? null : Math.abs(x) <= u95.x && Math.abs(y) <= u95.y,
    seconds: (middle(latest) - middle(first)) / 1e6,
  };
}

/** What the last third of the dwells says; null with fewer than eight. The same live, while a warm-up is under way. */
export function lastDrift(
  dwells: readonly Pick<Dwell, 'point' | 'startUs' | 'endUs'>[],
  fields: StickFields,
  step: Pair = { x: 1, y: 1 },
): WarmUpMeasure['last'] {
  if (dwells.length < LAST_DWELLS) return null;
  return driftOf(dwells.slice(-Math.max(LAST_DWELLS, Math.ceil(dwells.length / 3))), fields, step);
}

function driftOf(
  dwells: readonly Pick<Dwell, 'point' | 'startUs' | 'endUs'>[],
  fields: StickFields,
  step: Pair,
): WarmUpMeasure['last'] {
  const seconds = dwells.map((dwell) => middle(dwell) / 1e6);
  const along = (axis: 'x' | 'y') =>
    axisDrift(
      seconds,
      dwells.map(({ point }) => fields[axis].up * point[axis]),
      step[axis],
    );
  const [x, y] = [along('x'), along('y')];
  return x === null || y === null ? null : { x: x.slope, y: y.slope, u95: { x: x.u95, y: y.u95 } };
}

function middle({ startUs, endUs }: Pick<Dwell, 'startUs' | 'endUs'>): number {
  return (startUs + endUs) / 2;
}

function warmUpSpans(track: Track, stick: StickId): { readonly startUs: number; readonly endUs: number }[] {
  const edges = marksOf(track.marks, stick).filter(({ name }) => name === 'warmUp');
  return edges.flatMap((begin, index) => {
    if (begin.detail['edge'] === 'end') return [];
    return [{ startUs: begin.t, endUs: edges[index + 1]?.t ?? lastUs(track) }];
  });
}
