/** Readings of one axis without a gap between, with what its running median and its jumps are. */
import { medianOf3, medianOf5 } from '../numeric/small-median.ts';
import { stepNoise } from './step-noise.ts';

export interface AxisSeries {
  /** Microseconds. */
  readonly t: Float64Array;
  /** Raw counts. */
  readonly u: Float64Array;
  /** The running median of five readings, shrinking evenly toward the ends. */
  readonly middle: Float64Array;
}

export interface CleanSeries extends AxisSeries {
  /** 1 for readings that are not near fast motion. */
  readonly slow: Uint8Array;
  /** The readings with each jump replaced by its running median. */
  readonly clean: Float64Array;
  /** Indices of the jumps. */
  readonly jumps: readonly number[];
}

/** A jump is off the running median by more than so many times the noise, here and all about it, and so many steps. */
const JUMP_NOISES = 6;
const JUMP_STEPS = 3;
/** Readings to either side that say how unsteady it is about a jump. */
const NEAR = 6;

export function makeSeries(t: Float64Array, u: Float64Array): AxisSeries {
  return { t, u, middle: runningMedian(u) };
}

/** Finds the jumps among slow readings: single ones that leap and come back. `noise` and `step` of the axis in counts. */
export function cleanSeries(series: AxisSeries, slow: Uint8Array, noise: number, step: number): CleanSeries {
  const { u, middle } = series;
  const least = Math.max(JUMP_NOISES * noise, JUMP_STEPS * step);
  const jumps: number[] = [];
  const clean = Float64Array.from(u);
  for (let i = 0; i < u.length; i += 1) {
    const value = u[i] ?? Number.NaN;
    const off = Math.abs(value - (middle[i] ?? Number.NaN));
    if (slow[i] !== 1 || !(off > least) || off <= JUMP_NOISES * noiseAbout(u, i, step)) continue;
    jumps.push(i);
    clean[i] = middle[i] ?? Number.NaN;
  }
  return { ...series, slow, clean, jumps };
}

export function runningMedian(u: Float64Array): Float64Array {
  const at = (i: number): number => u[i] ?? Number.NaN;
  return u.map((value, i) => {
    const arm = Math.min(2, i, u.length - 1 - i);
    if (arm === 0) return value;
    return arm === 1
      ? medianOf3(at(i - 1), value, at(i + 1))
      : medianOf5(at(i - 2), at(i - 1), value, at(i + 1), at(i + 2));
  });
}

/** Noise of the readings about a place, without itself: fast motion and worn stretches raise it. */
function noiseAbout(u: Float64Array, i: number, step: number): number {
  return stepNoise([u.subarray(Math.max(0, i - NEAR), i), u.subarray(i + 1, i + 1 + NEAR)], step);
}
