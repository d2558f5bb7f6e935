/** Finds the slow sweep that a prompt asked for. */
import { medianOf5 } from '../../numeric/small-median.ts';
import type { Pair } from '../../pad/stick.ts';
import type { StickTrack } from './track.ts';
import type { Stretch } from './unbroken-stretches.ts';

/** A sweep from gate to gate through the rest; its indices begin and end where the stick leaves and meets the gate. */
export interface Sweep extends Stretch {
  /** Prompted direction, degrees counter-clockwise from +x. */
  readonly toward: number;
  /** The axis whose count moves most, in shares of its field. */
  readonly along: 'x' | 'y';
}

/** A sweep goes at least this far to either side of the rest, as a share of the half range. */
const LEAST_SIDE = 0.15;
/** Within this share of the whole way from its farthest points the stick leans on the gate. */
const END_SHARE = 0.02;
/** A motion at more than 60° to the prompt goes neither along nor against it: the axes are swapped. */
const ALONG = 0.5;

/**
 * The motion is taken along its own principal line through `about`, not along the prompt, so that turned, swapped and
 * inverted parts are seen as they are. Of several ways from end to end the last one that goes with the prompt, else the
 * last, is the sweep; what leads to its beginning is not. Null where the stick did not go to both sides of `about`.
 */
export function findSweep(track: StickTrack, stretch: Stretch, about: Pair, toward: number): Sweep | null {
  const length = stretch.to - stretch.from;
  if (length < 5) return null;
  const x = differences(track, 'x', stretch, about);
  const y = differences(track, 'y', stretch, about);
  const line = principalAngle(x, y);
  const prompted = (toward * Math.PI) / 180;
  const turned = Math.cos(line - prompted) < 0 ? line + Math.PI : line;
  const along = x.map((value, i) => value * Math.cos(turned) + (y[i] ?? 0) * Math.sin(turned));
  const ways = waysAcross(along);
  const goesAlong = Math.cos(turned - prompted) >= ALONG;
  const found = (goesAlong ? ways.findLast(({ forward }) => forward) : undefined) ?? ways.at(-1);
  if (found === undefined) return null;
  return {
    toward,
    along: Math.abs(Math.cos(line)) >= Math.SQRT1_2 ? 'x' : 'y',
    from: stretch.from + found.from,
    to: stretch.from + found.to,
  };
}

interface Way extends Stretch {
  readonly forward: boolean;
}

/** Each way from near the least to near the greatest value, or back. */
function waysAcross(along: Float64Array): Way[] {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of along) {
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  if (!(least <= -LEAST_SIDE && greatest >= LEAST_SIDE)) return [];
  const margin = END_SHARE * (greatest - least);
  const ways: Way[] = [];
  let at: { readonly end: -1 | 1; readonly index: number } | null = null;
  for (let index = 0; index < along.length; index += 1) {
    const value = along[index] ?? Number.NaN;
    const end = value <= least + margin ? -1 : value >= greatest - margin ? 1 : 0;
    if (end === 0) continue;
    if (at !== null && at.end !== end) ways.push({ from: at.index, to: index + 1, forward: end === 1 });
    at = { end, index };
  }
  return ways;
}

/** Shares of the half range from `about`, y up, after a running median of five. */
function differences(track: StickTrack, axis: 'x' | 'y', { from, to }: Stretch, about: Pair): Float64Array {
  const counts = track[axis];
  const field = track.fields[axis];
  const scale = (2 * field.up) / (field.maximum - field.minimum);
  const at = (i: number): number => counts[Math.min(to - 1, Math.max(from, i))] ?? Number.NaN;
  const found = new Float64Array(to - from);
  for (let i = from; i < to; i += 1)
    found[i - from] = scale * (medianOf5(at(i - 2), at(i - 1), at(i), at(i + 1), at(i + 2)) - about[axis]);
  return found;
}

/** Direction of the longest extent through the origin, radians. */
function principalAngle(x: Float64Array, y: Float64Array): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < x.length; i += 1) {
    const dx = x[i] ?? Number.NaN;
    const dy = y[i] ?? 0;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return Math.atan2(2 * xy, xx - yy) / 2;
}
