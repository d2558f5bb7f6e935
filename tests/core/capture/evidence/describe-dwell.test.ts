import { describe, expect, it } from 'vitest';
import { describeDwell, tiltOf } from '../../../../core/capture/evidence/describe-dwell.ts';
import type { StickTrack } from '../../../../core/capture/evidence/track.ts';
import { eightBits, HandScript } from '../guide/hand-script.ts';

function stick(rows: readonly (readonly [number, number, number])[]): StickTrack {
  return {
    fields: eightBits,
    t: Float64Array.from(rows, ([t]) => t),
    x: Float64Array.from(rows, ([, x]) => x),
    y: Float64Array.from(rows, ([, , y]) => y),
    buttonDown: new Uint8Array(rows.length),
  };
}

describe('describeDwell', () => {
  it('weighs each reading by the time it was held, the one before the dwell included', () => {
    const track = stick([
      [0, 100, 50],
      [400, 110, 50],
      [900, 120, 60],
      [1000, 250, 250],
    ]);
    const dwell = describeDwell(track, { startUs: 200, endUs: 1000 });
    expect(dwell.point.x).toBeCloseTo((200 * 100 + 500 * 110 + 100 * 120) / 800, 12);
    expect(dwell.point.y).toBeCloseTo((700 * 50 + 100 * 60) / 800, 12);
    expect(dwell.reports).toBe(2);
    expect(dwell.variance).toBeNull();
    expect(dwell.least).toEqual({ x: 100, y: 50 });
    expect(dwell.greatest).toEqual({ x: 120, y: 60 });
    expect(dwell.readings).toEqual([100, 50, 110, 50, 120, 60]);
  });

  it('states the one reading that was held through a silent dwell', () => {
    const dwell = describeDwell(stick([[0, 131, 128]]), { startUs: 200_000, endUs: 900_000 });
    expect(dwell).toMatchObject({ point: { x: 131, y: 128 }, reports: 0, variance: null, readings: [131, 128] });
  });

  it('has the sample variance where reports come evenly', () => {
    const xs = Array.from({ length: 25 }, (_, i) => 100 + (i % 4));
    const track = stick(xs.map((x, i) => [i * 1000, x, 7]));
    const { point, variance } = describeDwell(track, { startUs: 0, endUs: 25_000 });
    const mean = xs.reduce((sum, x) => sum + x, 0) / 25;
    expect(point.x).toBeCloseTo(mean, 10);
    expect(variance?.x).toBeCloseTo(xs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 24, 10);
    expect(variance?.y).toBe(0);
  });

  it('knows where the stick came from, y up, however long a button kept the dwell from beginning', () => {
    const script = new HandScript({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 120 });
    script.stay(0.5).push(60).stay(0.3).letGo().stay(2);
    const { from } = describeDwell(script.stick, { startUs: script.t - 600_000, endUs: script.t });
    expect((Math.atan2(from?.y ?? 0, from?.x ?? 0) * 180) / Math.PI).toBeCloseTo(60, 0);
    expect(Math.hypot(from?.x ?? 0, from?.y ?? 0)).toBeCloseTo(1, 12);
  });

  it('names no direction where the stick was hardly tilted', () => {
    const script = new HandScript({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 120 });
    script.stay(0.5).push(60, 0.1).stay(0.3).letGo().stay(1);
    expect(describeDwell(script.stick, { startUs: script.t - 600_000, endUs: script.t }).from).toBeNull();
  });
});

it('tells tilts as shares of the half range of each axis', () => {
  const fields = { x: { minimum: 0, maximum: 200, up: 1 }, y: { minimum: 0, maximum: 2000, up: -1 } } as const;
  expect(tiltOf(fields, { x: 30, y: 400 })).toBeCloseTo(0.5, 12);
});
