import { expect, test } from 'vitest';
import type { AxisLine } from '../../../renderer/pads/axis-list.ts';
import { ByArrival } from '../../../core/pad/by-arrival.ts';
import { LiveReadings } from '../../../renderer/pads/live-readings.ts';
import type { Ink } from '../../../renderer/kit/theme/read-ink.ts';
import { createStripScratch, drawStrip } from '../../../renderer/pads/draw-strip.ts';
import { slotOf, smallReader } from '../support/small-pad.ts';

const axis: AxisLine = {
  id: 'left-x',
  says: 'left x',
  column: 0,
  kind: 'x',
  stick: 'left',
  minimum: 0,
  maximum: 255,
  lowEnd: 'left',
  highEnd: 'right',
};
const ink = new Proxy({}, { get: () => 'black' }) as Ink;

/** A pen that keeps the strokes of the last line drawn, point by point, with null where the pen was lifted. */
function keepingPen(): { pen: CanvasRenderingContext2D; line: () => ({ x: number; y: number } | null)[] } {
  let points: ({ x: number; y: number } | null)[] = [];
  const known: Record<string, unknown> = {
    beginPath: () => (points = []),
    moveTo: (x: number, y: number) => points.push(null, { x, y }),
    lineTo: (x: number, y: number) => points.push({ x, y }),
  };
  const pen = new Proxy(known, { get: (all, name) => all[String(name)] ?? (() => undefined), set: () => true });
  return { pen: pen as unknown as CanvasRenderingContext2D, line: () => points };
}

function drawn(live: LiveReadings, width: number, nowMicros: number): ({ x: number; y: number } | null)[] {
  const { pen, line } = keepingPen();
  drawStrip(
    pen,
    live,
    { width, height: 120, nowMicros, axes: [axis], scale: 'field', ink },
    createStripScratch(live.ring.capacity),
  );
  return line();
}

function liveOf(values: readonly number[]): LiveReadings {
  const live = new LiveReadings(new ByArrival(() => smallReader), slotOf({}));
  values.forEach((value, index) => live.ring.take(index * 1000, slotOf({ axes: [value, 0] })));
  return live;
}

test('one reading among ten thousand is drawn as its peak on a strip of a hundred pixels', () => {
  const values = new Array<number>(10_000).fill(128);
  values[4321] = 250;
  values[7777] = 3;
  const line = drawn(liveOf(values), 168, 10e6);
  const heights = line.flatMap((point) => (point === null ? [] : [point.y]));
  const scale = (value: number): number => 97 - (value / 255) * 94;
  expect(Math.min(...heights)).toBeCloseTo(scale(250), 6);
  expect(Math.max(...heights)).toBeCloseTo(scale(3), 6);
  expect(line.length).toBeLessThan(600);
});

test('the reading right after a gap is drawn, and the line to it is not', () => {
  const live = liveOf([128, 128, 128]);
  live.ring.take(4e6, slotOf({ axes: [250, 0] }));
  live.ring.take(4.001e6, slotOf({ axes: [128, 0] }));
  live.gaps.push(2e6);
  const line = drawn(live, 1068, 10e6);
  const peak = line.findIndex((point) => point !== null && point.y < 20);
  expect(peak).toBeGreaterThan(0);
  expect(line[peak - 1]).toBeNull();
});
