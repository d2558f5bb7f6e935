/** Travel of one axis. */
import type { StickTrack } from '../capture/evidence/track.ts';
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import { evenInterval } from './even-timing.ts';
import { cleanSeries, makeSeries, type AxisSeries, type CleanSeries } from './axis-series.ts';
import { backwardPlaces, backwardShare } from './backwards.ts';
import { missingCounts } from './missing-counts.ts';
import { movingReadings } from './moving-readings.ts';
import { slowReadings } from './slow-readings.ts';
import { stepNoise } from './step-noise.ts';
import type { AxisTravel } from './travel-measure.ts';
import { unsteadyCounts } from './unsteady-counts.ts';

/** An axis travels where it goes at least this share of the half range to either side of the rest. */
const LEAST_SIDE = 0.15;
/** A stick moves where it goes so many steps and so many σ of its noise within 100 ms. */
const MOVING_STEPS = 2;
const MOVING_NOISES = 4;
/** What is left out at either end of a sweep: readings, and microseconds. */
const ENDS = 4;
const ENDS_US = 60_000;
/** Places of jumps that are listed. */
const MOST_JUMPS = 100;

/**
 * Extents are those of the running median of five, so that a single false reading widens nothing. `rest` is raw counts.
 * Null where the axis did not go to both sides of the rest.
 */
export function axisTravel(
  track: StickTrack,
  axis: 'x' | 'y',
  stretches: readonly Stretch[],
  sweeps: readonly Stretch[],
  step: number,
  rest: number,
): AxisTravel | null {
  const all = stretches.map(({ from, to }) => makeSeries(track.t.subarray(from, to), track[axis].subarray(from, to)));
  const { min, max } = extentsOf(all);
  const side = (LEAST_SIDE * (track.fields[axis].maximum - track.fields[axis].minimum)) / 2;
  if (!(rest - min >= side && max - rest >= side)) return null;
  const noise = stepNoise(
    all.map(({ u }) => u),
    step,
  );
  const series = all.map((one, i) =>
    cleanSeries(one, slowReadings(track, stretches[i] ?? { from: 0, to: 0 }), noise, step),
  );
  const moving = series.map((one) => movingReadings(one, Math.max(MOVING_STEPS * step, MOVING_NOISES * noise)));
  const isEven = evenInterval(all) !== null;
  const jumpsAt = isEven ? series.flatMap(({ u, jumps }) => jumps.map((i) => u[i] ?? Number.NaN)) : [];
  return {
    min,
    max,
    ...missingCounts(moving, min, max, step),
    jumps: isEven ? jumpsAt.length : null,
    jumpsAt: jumpsAt.slice(0, MOST_JUMPS),
    backwards: backwardShare(ofSweeps(stretches, series, sweeps, 'middle'), noise, step),
    backwardsAt: backwardPlaces(ofSweeps(stretches, series, sweeps, 'u'), noise, step, { from: min, to: max }),
    unsteady: unsteadyCounts(withinSweeps(stretches, series, sweeps), min, max, step),
    step,
  };
}

function extentsOf(series: readonly AxisSeries[]): { min: number; max: number } {
  let [min, max] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { middle } of series)
    for (const count of middle) {
      min = Math.min(min, count);
      max = Math.max(max, count);
    }
  return { min, max };
}

/** The readings of the sweeps, which lie in the stretches, or the running medians. */
function ofSweeps(
  stretches: readonly Stretch[],
  series: readonly AxisSeries[],
  sweeps: readonly Stretch[],
  of: 'u' | 'middle',
): Float64Array[] {
  return sweeps.flatMap(({ from, to }) => {
    const index = stretches.findIndex((stretch) => stretch.from <= from && to <= stretch.to);
    const { from: begin } = stretches[index] ?? { from: 0 };
    return series[index]?.[of].subarray(from - begin, to - begin) ?? [];
  });
}

/**
 * Where there are sweeps only they are slow, and not their ends: a hand that sets off or stops within few reports changes the step from
 * reading to reading as an unsteady track does.
 */
function withinSweeps(
  stretches: readonly Stretch[],
  series: readonly CleanSeries[],
  sweeps: readonly Stretch[],
): readonly CleanSeries[] {
  if (sweeps.length === 0) return series;
  return series.map((one, i) => {
    const { from = 0, to = 0 } = stretches[i] ?? {};
    const slow = new Uint8Array(one.slow.length);
    for (const sweep of sweeps) {
      if (sweep.from < from || sweep.to > to) continue;
      const [begin, end] = [sweep.from - from, sweep.to - from];
      for (let k = begin + ENDS; k < end - ENDS; k += 1) {
        const isEnd =
          (one.t[k] ?? 0) - (one.t[begin] ?? 0) < ENDS_US || (one.t[end - 1] ?? 0) - (one.t[k] ?? 0) < ENDS_US;
        slow[k] = isEnd ? 0 : (one.slow[k] ?? 0);
      }
    }
    return { ...one, slow };
  });
}
