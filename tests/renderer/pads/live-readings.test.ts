import { expect, test } from 'vitest';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { ByArrival } from '../../../core/pad/by-arrival.ts';
import { LiveReadings, type PadReader } from '../../../renderer/pads/live-readings.ts';
import { smallLayout, smallReader } from '../support/small-pad.ts';

function live(): LiveReadings {
  return new LiveReadings(new ByArrival(() => smallReader), createReadingSlot());
}

test('keeps each reading in the ring and in the extents', () => {
  const readings = live();
  readings.report(10, 1, Uint8Array.of(100, 200));
  readings.report(20, 1, Uint8Array.of(110, 190));
  expect(readings.ring.newest(0)).toBe(110);
  expect(readings.ring.timeOf(0)).toBe(10);
  expect([readings.extents.least[1], readings.extents.greatest[1]]).toEqual([190, 200]);
});

test('passes over reports that are no readings and tells what was wrong with a broken one', () => {
  const readings = live();
  readings.report(10, 9, Uint8Array.of(1));
  expect(readings.ring.taken).toBe(0);
  expect(readings.problem).toBeNull();
  readings.report(20, 1, Uint8Array.of(1));
  expect(readings.problem?.code).toBe('report-too-short');
  expect(readings.ring.taken).toBe(0);
});

test('reads the pad anew by the reports that really come', () => {
  const noTrigger: PadReader = { ...smallReader, layout: { ...smallLayout, triggers: {} } };
  const readings = new LiveReadings(
    new ByArrival((arriving) => (arriving?.has(2) === true ? noTrigger : smallReader)),
    createReadingSlot(),
  );
  readings.report(1, 1, Uint8Array.of(1, 1));
  readings.report(2, 1, Uint8Array.of(1, 1));
  expect(readings.layout.triggers.right).toBeDefined();
  readings.report(3, 2, Uint8Array.of(1, 1));
  expect(readings.layout.triggers.right).toBeUndefined();
  expect(readings.controls.rows().some((row) => row.id === 'trigger-right')).toBe(false);
});

test('keeps the times of gaps, and only the last of very many', () => {
  const readings = live();
  for (let t = 0; t < 300; t += 1) readings.gap(t);
  expect(readings.gaps).toHaveLength(256);
  expect(readings.gaps.at(-1)).toBe(299);
});

test('tells the bench’s time now from the newest reading and the time since it came', () => {
  const readings = live();
  readings.arrivedMillis = 1000;
  readings.report(5_000_000, 1, Uint8Array.of(1, 1));
  expect(readings.nowMicros(1250)).toBe(5_250_000);
  expect(readings.nowMicros(990)).toBe(5_000_000);
});
