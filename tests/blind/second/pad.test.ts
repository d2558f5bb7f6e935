import { describe, expect, it } from 'vitest';
import { TrackBuilder } from '../../../core/capture/evidence/build-track.ts';
import type { StickTrack, Track } from '../../../core/capture/evidence/track.ts';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import { LogReader } from '../../../core/log/reader.ts';
import { createReadingDecoder } from '../../../core/pad/decode-reading.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { fieldRange, gamePadDescriptor } from './descriptor.ts';
import { drawUnit, type Wish } from './draw-unit.ts';
import { reportedOf } from './firmware.ts';
import { packReport } from './pack-report.ts';
import { takeSurvey } from './survey.ts';
import type { Unit } from './unit.ts';
import { linesOf } from './write-log.ts';

const wish: Wish = { seed: 7, pad: 'sensor12', gate: 'round', faults: [], slip: null };

/** At a rate that keeps the log short, nothing lost. */
function slowUnit(of: Wish): Unit {
  const unit = drawUnit(of);
  return { ...unit, plan: { ...unit.plan, rateHz: 66, loss: null } };
}

function trackOf(of: Wish): Track {
  const builder = new TrackBuilder();
  takeSurvey(slowUnit(of), builder);
  const track = builder.finish();
  if (!track.ok) throw new Error(track.problem.says);
  return track.value;
}

/** Seconds between the marks of a capture. */
function spanOf({ marks }: Track, purpose: string): readonly [number, number] {
  const times = marks
    .filter(({ name, detail }) => name === 'capture' && detail['purpose'] === purpose)
    .map(({ t }) => t);
  return [times[0] ?? 0, times[1] ?? 0];
}

/** Degrees turned from reading to reading while the stick is far out, both ways apart. */
function turnedIn(
  { t, x, y, fields }: StickTrack,
  [from, to]: readonly [number, number],
): { left: number; right: number } {
  const sums = { left: 0, right: 0 };
  let last: number | null = null;
  t.forEach((time, at) => {
    if (time < from || time > to) return;
    const middle = (fields.x.minimum + fields.x.maximum) / 2;
    const place = { x: fields.x.up * ((x[at] ?? 0) - middle), y: fields.y.up * ((y[at] ?? 0) - middle) };
    const isOut = Math.hypot(place.x, place.y) > 0.4 * (fields.x.maximum - middle);
    const angle = isOut ? (Math.atan2(place.y, place.x) * 180) / Math.PI : null;
    if (angle !== null && last !== null) {
      const step = ((angle - last + 540) % 360) - 180;
      sums[step >= 0 ? 'left' : 'right'] += Math.abs(step);
    }
    last = angle;
  });
  return sums;
}

describe('a survey of the second hand', () => {
  it('is the same, byte for byte, for the same seed, and another for another', () => {
    const one = linesOf(slowUnit({ ...wish, pad: 'reported8' }));
    expect(one).toEqual(linesOf(slowUnit({ ...wish, pad: 'reported8' })));
    expect(one).not.toEqual(linesOf(slowUnit({ ...wish, pad: 'reported8', seed: 8 })));
    expect(one.length).toBeGreaterThan(3000);
  });

  it('is the same read from a written log as it is judged', () => {
    const builder = new TrackBuilder();
    const reader = new LogReader(builder);
    for (const line of linesOf(slowUnit(wish))) expect(reader.push(new TextEncoder().encode(line)).ok).toBe(true);
    expect(reader.end()).toMatchObject({ ok: true, value: { cut: false } });
    const read = builder.finish();
    const judged = trackOf(wish);
    if (!read.ok) throw new Error(read.problem.says);
    expect(read.value.sticks.left?.x).toEqual(judged.sticks.left?.x);
    expect(read.value.marks).toEqual(judged.marks);
    expect(judged.sticks.left?.x.length).toBeGreaterThan(10_000);
  });

  it('turns three times and a little each way', () => {
    for (const pad of ['sensor12', 'reported8', 'reported16'] as const) {
      const track = trackOf({ ...wish, pad });
      const stick = track.sticks.left;
      if (stick === undefined) throw new Error('There is no left stick.');
      const turned = turnedIn(stick, spanOf(track, 'rim'));
      for (const degrees of [turned.left, turned.right]) {
        expect(degrees).toBeGreaterThan(1097);
        expect(degrees).toBeLessThan(1250);
      }
    }
  });

  it('reads as the pad says it does: domain, bits, marks and the numbers it keeps', () => {
    const sensor = trackOf(wish);
    expect(sensor.layout.domain).toBe('sensor');
    expect(sensor.marks[0]?.name).toBe('layers');
    const names = sensor.marks.filter(({ name }) => name === 'release').length;
    expect(names).toBe(24 + 4);
    const reported = trackOf({ ...wish, pad: 'reported10' });
    expect(reported.layout.domain).toBe('reported');
    expect(reported.marks.some(({ name }) => name === 'layers')).toBe(false);
    const { fields } = reported.sticks.left ?? {};
    expect((fields?.x.maximum ?? 0) - (fields?.x.minimum ?? 0)).toBe(1023);
  });
});

describe('the reports of a pad', () => {
  it('decode to the values that were packed, whatever the descriptor', () => {
    for (const fieldBits of [8, 10, 12, 16])
      for (const signed of [false, true])
        for (const rightIs of ['rotation', 'z'] as const) {
          const descriptor = parseDescriptor(gamePadDescriptor({ fieldBits, signed, rightIs }));
          if (!descriptor.ok) throw new Error(descriptor.problem.says);
          const layout = findLayout(descriptor.value, null);
          const { least, greatest } = fieldRange({ fieldBits, signed });
          const axes = [least, greatest, least + 5, greatest - 7];
          const values = { axes, triggers: [3, 250], hat: 2, buttons: 0b1000_0000_0000_0101 } as const;
          const slot = createReadingSlot();
          const bytes = packReport({ domain: 'reported', fieldBits }, values);
          expect(createReadingDecoder(layout).read(1, bytes, slot)).toBe('reading');
          expect([...slot.axes]).toEqual(axes);
          expect([...slot.triggers]).toEqual([3, 250]);
          expect(slot.hat[0]).toBe(90);
          expect(slot.buttons[0]).toBe(0b1000_0000_0000_0101);
        }
  });

  it('are at full field at the kept edges, and nothing within the band of the firmware', () => {
    const { plan, stored } = drawUnit({ ...wish, pad: 'reported8', faults: [{ name: 'firmware-band', size: 8 }] });
    const { x, y } = stored.left;
    const range = fieldRange(plan);
    expect(reportedOf(plan, stored.left, { x: x.max, y: y.min })).toEqual({ x: range.greatest, y: range.least });
    const middle = plan.signed ? 0 : 128;
    const within = { x: x.centre + 0.05 * (x.max - x.centre), y: y.centre };
    expect(reportedOf(plan, stored.left, within)).toEqual({ x: middle, y: middle });
    const beyond = { x: x.centre + 0.3 * (x.max - x.centre), y: y.centre };
    expect(reportedOf(plan, stored.left, beyond).x).toBeGreaterThan(middle + 20);
  });
});
