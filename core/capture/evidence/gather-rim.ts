/** Gathers the turns of a stick and what they show of its gate. */
import { directionAngles } from '../../geometry/directions.ts';
import type { Mark } from '../../log/visitor.ts';
import type { Pair } from '../../pad/stick.ts';
import { repeatsOf, type MarkedSpan } from './capture-marks.ts';
import { tiltOf } from './describe-dwell.ts';
import type { RimEvidence, Turn } from './evidence.ts';
import { indexAt } from './find-index.ts';
import { gateTrace } from './gate-trace.ts';
import { rimShape } from './rim-shape.ts';
import { GAP_US } from './still-spans.ts';
import type { StickTrack, Track } from './track.ts';
import { TurnCounter } from './turn-counter.ts';
import { waysAlong } from './ways-along.ts';

/** A gate nearer the rest than this share of the half range is not taken for one unless a mark says so. */
const GATE_SHARE = 0.3;

/** Parts of turns alone make a rim where they pass so much of it. */
const MOST_PASSED = 0.75;

/** Whole turns, and ways along the gate that are none. */
export interface Ways {
  readonly turns: readonly Turn[];
  readonly parts: readonly Turn[];
}

/** Turns of a marked rim capture about a point; a `repeat` mark drops the last turn before it. */
export function markedTurns(
  track: StickTrack,
  marks: readonly Mark[],
  span: MarkedSpan,
  gaps: Track['gaps'],
  about: Pair,
): Ways {
  const counter = new TurnCounter(track.fields, about);
  let from = span.startUs;
  for (const t of repeatsOf(marks, 'turn', span)) {
    feed(counter, track, from, t + 1, gaps);
    counter.dropLast();
    from = t + 1;
  }
  feed(counter, track, from, span.endUs + 1, gaps);
  counter.end();
  return { turns: counter.turns, parts: counter.parts };
}

/** Of several captures. */
export function joinWays(ways: readonly Ways[]): Ways {
  return { turns: ways.flatMap(({ turns }) => turns), parts: ways.flatMap(({ parts }) => parts) };
}

/** Turns anywhere in a log without capture marks; none where the stick stayed well within its field. */
export function inferredTurns(track: StickTrack, gaps: Track['gaps'], about: Pair): Ways {
  const counter = new TurnCounter(track.fields, about);
  feed(counter, track, 0, Number.POSITIVE_INFINITY, gaps);
  counter.end();
  const gate = tiltOf(track.fields, { x: counter.outerRadius, y: 0 });
  // Without a mark a part of a turn alone may be any motion.
  const isGate = gate >= GATE_SHARE && counter.turns.length > 0;
  return isGate ? { turns: counter.turns, parts: counter.parts } : { turns: [], parts: [] };
}

/** Null without a whole turn, or parts of turns that go round most of the gate together. */
export function rimOf(track: StickTrack, { turns, parts }: Ways, about: Pair): RimEvidence | null {
  const ways = waysAlong({ turns, parts });
  if (turns.length === 0 && passedShare(ways) < MOST_PASSED) return null;
  const rim = {
    about,
    turns,
    shape: rimShape(ways, about, track.fields),
    trace: gateTrace(track, turns.length > 0 ? turns : ways),
  };
  return parts.length === 0 ? rim : { ...rim, parts };
}

function passedShare(ways: readonly Turn[]): number {
  const passed = directionAngles.filter((_, i) => ways.some((way) => (way.points[i] ?? null) !== null));
  return passed.length / directionAngles.length;
}

/** Middle of the extents of the readings in a span of time, raw counts; null without readings. */
export function middleOfExtents(track: StickTrack, startUs: number, endUs: number): Pair | null {
  const from = indexAt(track.t, startUs);
  const to = indexAt(track.t, endUs + 1);
  if (from >= to) return null;
  const middle = (values: Float64Array): number => {
    const span = values.subarray(from, to);
    let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const value of span) {
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    }
    return (least + greatest) / 2;
  };
  return { x: middle(track.x), y: middle(track.y) };
}

/** Readings from a time on and before another. */
function feed(counter: TurnCounter, track: StickTrack, fromUs: number, beforeUs: number, gaps: Track['gaps']): void {
  const { t, x, y } = track;
  const to = indexAt(t, beforeUs);
  let gap = 0;
  for (let i = indexAt(t, fromUs); i < to; i += 1) {
    const at = t[i] ?? 0;
    const before = t[i - 1] ?? at;
    for (; gap < gaps.length && (gaps[gap]?.t ?? 0) <= at; gap += 1)
      if ((gaps[gap]?.t ?? 0) >= before && at - before > GAP_US) counter.interrupt();
    counter.reading(at, x[i] ?? Number.NaN, y[i] ?? Number.NaN);
  }
}
