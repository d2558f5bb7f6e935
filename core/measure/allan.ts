/** Measures how the noise of a resting stick averages out. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { markedStills } from '../capture/evidence/capture-marks.ts';
import { indexAt } from '../capture/evidence/find-index.ts';
import type { Track } from '../capture/evidence/track.ts';
import { overlappingAllanDeviation } from '../numeric/allan.ts';
import type { StickId } from '../pad/stick.ts';
import type { AllanMeasure } from './allan-measure.ts';
import { evenInterval } from './even-timing.ts';
import { settledDwells } from './mean-rest.ts';

/** Fewer readings tell of no time worth the name. */
const LEAST_READINGS = 1_000;
/** An interval longer than so many usual ones hides a report. */
const LONGEST_INTERVALS = 2.5;
/** Of so many stretches at least each deviation is the mean. */
const LEAST_STRETCHES = 4;

/**
 * Overlapping Allan deviation in counts against τ in microseconds, τ doubling from the interval of the reports up to a quarter
 * of the stretch. Of the dwell or the stretch marked `still` with most readings that is evenly timed, without a gap, and has a
 * thousand readings; else null.
 * Source: core/numeric/allan.ts.
 */
export function measureAllan(track: Track, stick: StickId, evidence: StickEvidence): AllanMeasure | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const spans = [...settledDwells(evidence), ...markedStills(track.marks, stick)]
    .map(({ startUs, endUs }) => ({
      startUs,
      endUs,
      from: indexAt(readings.t, startUs),
      to: indexAt(readings.t, endUs),
    }))
    .filter(({ from, to }) => to - from >= LEAST_READINGS)
    .toSorted((a, b) => b.to - b.from - (a.to - a.from));
  for (const { startUs, endUs, from, to } of spans) {
    const interval = evenInterval([{ t: readings.t.subarray(from, to) }]);
    if (interval === null || !isUnbroken(readings.t.subarray(from, to), interval)) continue;
    if (track.gaps.some(({ t }) => t >= startUs && t <= endUs)) continue;
    const [x, y] = [readings.x.subarray(from, to), readings.y.subarray(from, to)];
    const factors: number[] = [];
    for (let factor = 1; factor <= (to - from) / LEAST_STRETCHES; factor *= 2) factors.push(factor);
    const deviations = (values: Float64Array): number[] | null =>
      values.every((value) => value === values[0])
        ? null
        : factors.map((factor) => overlappingAllanDeviation(values, factor) ?? Number.NaN);
    return { tauUs: factors.map((factor) => factor * interval), x: deviations(x), y: deviations(y) };
  }
  return null;
}

/** No interval is so long that a report may be missing in it. */
function isUnbroken(t: Float64Array, interval: number): boolean {
  return t.every((at, i) => i === 0 || at - (t[i - 1] ?? at) <= LONGEST_INTERVALS * interval);
}
