/** Draws the gate that the turns of a capture felt out. */
import type { Turn } from './evidence.ts';
import { indexAt } from './find-index.ts';
import { pointWeights } from './point-weights.ts';
import type { StickTrack } from './track.ts';

/** Points a trace may have. */
const MOST_POINTS = 1500;
/** Half a count: no reading is moved by more, unless there are too many. */
const FINEST = 0.5;
const COARSER = 1.25;

/**
 * Raw counts as reported, x and y in turn: the readings of the turns, thinned so that the line stays within half a count
 * of each (or the least more that 1,500 points allow). Where turns do not follow on each other the line goes back
 * along the gate to where the next began, so that it never cuts across.
 */
export function gateTrace(track: StickTrack, turns: readonly Turn[]): number[] {
  const lines = stretchesOf(turns).map(({ startUs, endUs }) => {
    const points = readingsBetween(track, startUs, endUs);
    return { points, weights: pointWeights(points, FINEST) };
  });
  for (let tolerance = FINEST; ; tolerance *= COARSER) {
    if (countAbove(lines, tolerance) > MOST_POINTS) continue;
    const trace = join(lines.map((line) => thin(line, tolerance)));
    if (trace.length <= 2 * MOST_POINTS) return trace;
  }
}

interface Line {
  readonly points: readonly number[];
  readonly weights: Float64Array;
}

/** Points that are kept at a tolerance, without the ways back. */
function countAbove(lines: readonly Line[], tolerance: number): number {
  let count = 0;
  for (const { weights } of lines)
    for (let i = 0; i < weights.length; i += 1) if ((weights[i] ?? 0) > tolerance) count += 1;
  return count;
}

function thin({ points, weights }: Line, tolerance: number): number[] {
  const kept: number[] = [];
  weights.forEach((weight, i) => {
    if (weight > tolerance) kept.push(points[2 * i] ?? 0, points[2 * i + 1] ?? 0);
  });
  return kept;
}

/** Turns that follow on each other, as one. */
function stretchesOf(turns: readonly Turn[]): { readonly startUs: number; readonly endUs: number }[] {
  const stretches: { startUs: number; endUs: number }[] = [];
  for (const { startUs, endUs } of turns) {
    const last = stretches.at(-1);
    if (last !== undefined && startUs <= last.endUs) last.endUs = Math.max(last.endUs, endUs);
    else stretches.push({ startUs, endUs });
  }
  return stretches;
}

function readingsBetween(track: StickTrack, startUs: number, endUs: number): number[] {
  const readings: number[] = [];
  const end = indexAt(track.t, endUs + 1);
  for (let i = indexAt(track.t, startUs); i < end; i += 1) readings.push(track.x[i] ?? 0, track.y[i] ?? 0);
  return readings;
}

function join(lines: readonly (readonly number[])[]): number[] {
  const trace: number[] = [];
  for (const line of lines) {
    if (trace.length > 0) trace.push(...wayBack(trace, line[0] ?? 0, line[1] ?? 0));
    for (const value of line) trace.push(value);
  }
  return trace;
}

/** The trace run backwards from its end to the point nearest to (x, y). */
function wayBack(trace: readonly number[], x: number, y: number): number[] {
  const off = (i: number): number => ((trace[i] ?? 0) - x) ** 2 + ((trace[i + 1] ?? 0) - y) ** 2;
  let nearest = trace.length - 2;
  for (let i = nearest; i >= 0; i -= 2) if (off(i) < off(nearest)) nearest = i;
  const back: number[] = [];
  for (let i = trace.length - 4; i >= nearest; i -= 2) back.push(trace[i] ?? 0, trace[i + 1] ?? 0);
  return back;
}
