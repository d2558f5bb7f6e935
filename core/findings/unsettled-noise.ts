/** Noise of a stick so restless that its releases never settle. */
import { findCaptures } from '../capture/find-captures.ts';
import type { Track } from '../capture/track.ts';
import { median } from '../numeric/quantile.ts';
import type { StickId } from '../pad/stick.ts';

/** Readings within this share of the field's range about their median stand at the rest: in a rest capture most do. */
const NEAR_SHARE = 0.1;
const LEAST_READINGS = 200;
/** Of normal noise the median of |d| is σ/1.4826. */
const NORMAL = 1.4826;

/**
 * σ of each axis in counts, from the rest captures: 1.4826·median|2u_i − u_{i−1} − u_{i+1}|/√6 over neighbouring readings near
 * the rest, for white noise, whatever slow motion it sits on. Null without a rest capture of at least 200 such readings.
 */
export function unsettledNoise(track: Track, stick: StickId): { readonly x: number; readonly y: number } | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const rests = findCaptures(track, stick).captures.filter(({ purpose }) => purpose === 'rest');
  const ofAxis = (axis: 'x' | 'y'): number | null => {
    const { minimum, maximum } = readings.fields[axis];
    const parts = rests.map(({ from, to }) => readings[axis].subarray(from, to));
    const rest = median(parts.flatMap((part) => Array.from(part)));
    const seconds = parts.flatMap((part) => secondDifferences(part, rest, NEAR_SHARE * (maximum - minimum)));
    return seconds.length < LEAST_READINGS ? null : (NORMAL * median(seconds)) / Math.sqrt(6);
  };
  const [x, y] = [ofAxis('x'), ofAxis('y')];
  return x === null || y === null ? null : { x, y };
}

function secondDifferences(counts: Float64Array, rest: number, near: number): number[] {
  const found: number[] = [];
  for (let i = 1; i + 1 < counts.length; i += 1) {
    const [before, here, after] = [counts[i - 1] ?? Number.NaN, counts[i] ?? Number.NaN, counts[i + 1] ?? Number.NaN];
    const isNear = Math.max(Math.abs(before - rest), Math.abs(here - rest), Math.abs(after - rest)) <= near;
    if (isNear) found.push(Math.abs(2 * here - before - after));
  }
  return found;
}
