/** Raw counts of one stick against time: two lanes, x above y, on a canvas. */
import { decimateExtremes, POINTS_A_BUCKET } from '../../core/plot/decimate-extremes.ts';
import { linearScale, type LinearScale } from '../../core/plot/linear-scale.ts';
import { count } from '../../core/plot/number-text.ts';
import { countTicks } from '../../core/plot/ticks.ts';
import type { AxisLine } from './axis-list.ts';
import { GAPS_KEPT, type LiveReadings } from './live-readings.ts';
import type { Ink } from '../kit/theme/read-ink.ts';

export const STRIP_SECONDS = 10;
export type StripScale = 'field' | 'close';

const LEFT = 58;
const RIGHT = 10;
const TIME_ROOM = 20;
const LANE_GAP = 14;
const FONT_PIXELS = 11.5;
const MOST_TICKS = 9;
/** Close up, a lane shows this share of the field, and eight counts at least. */
const CLOSE_SHARE = 1 / 64;

/** Columns that the ring is unrolled into before it is thinned; made once, used for every frame. */
export interface StripScratch {
  readonly t: Float64Array;
  readonly v: Float64Array;
  out: Float64Array;
}

export function createStripScratch(capacity: number): StripScratch {
  const room = capacity + GAPS_KEPT + 1;
  return { t: new Float64Array(room), v: new Float64Array(room), out: new Float64Array(0) };
}

export interface StripFrame {
  readonly width: number;
  readonly height: number;
  readonly nowMicros: number;
  readonly axes: readonly AxisLine[];
  readonly scale: StripScale;
  readonly ink: Ink;
}

export function drawStrip(
  pen: CanvasRenderingContext2D,
  live: LiveReadings,
  frame: StripFrame,
  scratch: StripScratch,
): void {
  const { width, height, axes, ink } = frame;
  pen.clearRect(0, 0, width, height);
  pen.font = `${FONT_PIXELS}px ${ink.sans}`;
  pen.textBaseline = 'middle';
  const time = linearScale([frame.nowMicros - STRIP_SECONDS * 1e6, frame.nowMicros], [LEFT, width - RIGHT]);
  const laneHeight = (height - TIME_ROOM - LANE_GAP * (axes.length - 1)) / Math.max(1, axes.length);
  drawSeconds(pen, frame, time);
  axes.forEach((axis, lane) => {
    const top = lane * (laneHeight + LANE_GAP);
    const value = linearScale(laneDomain(axis, frame.scale, live), [top + laneHeight - 3, top + 3]);
    drawLane(pen, axis, frame, value, top, laneHeight);
    drawGaps(pen, live, frame, time, top, laneHeight);
    drawLine(pen, live, axis, frame, time, value, scratch, top, laneHeight);
  });
}

function laneDomain(axis: AxisLine, scale: StripScale, live: LiveReadings): readonly [number, number] {
  const field: readonly [number, number] = [axis.minimum, axis.maximum];
  const newest = live.ring.newest(axis.column);
  if (scale === 'field' || Number.isNaN(newest)) return field;
  const half = Math.max(4, ((axis.maximum - axis.minimum) * CLOSE_SHARE) / 2);
  // In whole steps, so that the scale stands still while the reading trembles.
  const middle = Math.round(newest / half) * half;
  return [middle - half * 1.5, middle + half * 1.5];
}

function drawSeconds(pen: CanvasRenderingContext2D, frame: StripFrame, time: LinearScale): void {
  const { height, ink } = frame;
  pen.textAlign = 'center';
  for (let back = 0; back <= STRIP_SECONDS; back += 2) {
    const x = Math.round(time.at(frame.nowMicros - back * 1e6)) + 0.5;
    pen.strokeStyle = ink.faint;
    pen.beginPath();
    pen.moveTo(x, 0);
    pen.lineTo(x, height - TIME_ROOM);
    pen.stroke();
    pen.fillStyle = ink.soft;
    pen.textAlign = back === 0 ? 'right' : 'center';
    pen.fillText(back === 0 ? 'now' : `−${back} s`, back === 0 ? x + 4 : x, height - TIME_ROOM / 2 + 2);
  }
}

function drawLane(
  pen: CanvasRenderingContext2D,
  axis: AxisLine,
  frame: StripFrame,
  value: LinearScale,
  top: number,
  laneHeight: number,
): void {
  const { width, ink } = frame;
  const [low, high] = value.domain;
  pen.strokeStyle = ink.rule;
  pen.strokeRect(LEFT + 0.5, Math.round(top) + 0.5, width - LEFT - RIGHT - 1, Math.round(laneHeight) - 1);
  pen.textAlign = 'right';
  for (const tick of countTicks(low, high, Math.min(MOST_TICKS, Math.max(2, Math.floor(laneHeight / 26)))).values) {
    const y = Math.round(value.at(tick)) + 0.5;
    pen.strokeStyle = ink.faint;
    pen.beginPath();
    pen.moveTo(LEFT + 1, y);
    pen.lineTo(width - RIGHT - 1, y);
    pen.stroke();
    pen.fillStyle = ink.soft;
    const fits = y > top + 5 && y < top + laneHeight - 4;
    pen.fillText(count(tick), LEFT - 6, fits ? y : Math.min(Math.max(y, top + 6), top + laneHeight - 5));
  }
  pen.textAlign = 'left';
  pen.fillStyle = ink.ink;
  pen.fillText(axis.says, LEFT + 8, top + 11);
}

function drawGaps(
  pen: CanvasRenderingContext2D,
  live: LiveReadings,
  frame: StripFrame,
  time: LinearScale,
  top: number,
  laneHeight: number,
): void {
  pen.strokeStyle = frame.ink.fault;
  pen.fillStyle = frame.ink.fault;
  pen.textAlign = 'left';
  pen.setLineDash([3, 3]);
  for (const gap of live.gaps) {
    if (gap < time.domain[0]) continue;
    const x = Math.round(time.at(gap)) + 0.5;
    pen.beginPath();
    pen.moveTo(x, top);
    pen.lineTo(x, top + laneHeight);
    pen.stroke();
    pen.fillText('gap', x + 3, top + laneHeight - 8);
  }
  pen.setLineDash([]);
}

function drawLine(
  pen: CanvasRenderingContext2D,
  live: LiveReadings,
  axis: AxisLine,
  frame: StripFrame,
  time: LinearScale,
  value: LinearScale,
  scratch: StripScratch,
  top: number,
  laneHeight: number,
): void {
  const buckets = Math.max(1, Math.floor(time.range[1] - time.range[0]));
  const room = 2 * POINTS_A_BUCKET * buckets + 4;
  if (scratch.out.length < room) scratch.out = new Float64Array(room);
  const length = live.ring.unroll(axis.column, time.domain[0], frame.nowMicros, live.gaps, scratch.t, scratch.v);
  const span = { from: time.domain[0], to: time.domain[1] };
  const points = decimateExtremes({ t: scratch.t, v: scratch.v, length }, span, buckets, scratch.out);
  pen.save();
  pen.beginPath();
  pen.rect(LEFT + 1, top, frame.width - LEFT - RIGHT - 2, laneHeight);
  pen.clip();
  pen.strokeStyle = frame.ink.accent;
  pen.lineWidth = 1.5;
  pen.lineJoin = 'round';
  pen.beginPath();
  let down = false;
  for (let point = 0; point < points; point += 1) {
    const y = scratch.out[2 * point + 1] ?? Number.NaN;
    const x = time.at(scratch.out[2 * point] ?? Number.NaN);
    if (Number.isNaN(y)) down = false;
    else if (down) pen.lineTo(x, value.at(y));
    else {
      pen.moveTo(x, value.at(y));
      down = true;
    }
  }
  pen.stroke();
  pen.restore();
}
