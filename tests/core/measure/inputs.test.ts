import { describe, expect, it } from 'vitest';
import { measureInputs } from '../../../core/measure/inputs.ts';
import type { FieldSource } from '../../../core/pad/layout.ts';
import { makeTrack } from '../../support/make-track.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

function inputsOf(act: (bench: SimulatedBench) => void, switches: Parameters<typeof soundBut>[1] = {}) {
  const bench = new SimulatedBench(
    soundBut(() => ({}), switches),
    3,
  );
  bench.pad.hand.press(9, 100);
  bench.wait(0.3);
  bench.capture(
    'inputs',
    () => {
      act(bench);
    },
    { stick: null },
  );
  return measureInputs(bench.track())!;
}

const button = (inputs: ReturnType<typeof inputsOf>, usage: number) =>
  inputs.buttons.find((one) => one.usage === usage)!;

describe('measureInputs', () => {
  it('sees each button pressed and released, and counts only what was in the capture', () => {
    const inputs = inputsOf((bench) => {
      for (const usage of [1, 2]) {
        bench.pad.hand.press(usage, 100);
        bench.wait(0.3);
      }
      bench.pad.hand.press(3, 60_000);
      bench.wait(0.3);
    });
    expect(button(inputs, 1)).toEqual({ usage: 1, pressed: true, released: true, bounceMs: 0 });
    expect(button(inputs, 3)).toMatchObject({ pressed: true, released: false });
    expect(button(inputs, 9)).toEqual({ usage: 9, pressed: false, released: false, bounceMs: null });
    expect(inputs.clicks).toEqual({ left: 11, right: 12 });
  });

  it('measures how long a contact bounces', () => {
    const switches = [{ button: 2, bounceSeconds: 0.012 }];
    const inputs = inputsOf(
      (bench) => {
        for (let press = 0; press < 6; press += 1) {
          bench.pad.hand.press(2, 150);
          bench.wait(0.4);
        }
      },
      { switches },
    );
    expect(button(inputs, 2).bounceMs).toBeGreaterThan(5);
    expect(button(inputs, 2).bounceMs).toBeLessThanOrEqual(13);
  });

  it('takes a tap of one report for no bounce', () => {
    const inputs = inputsOf((bench) => {
      bench.pad.hand.press(2, 10);
      bench.wait(0.4);
    });
    expect(button(inputs, 2)).toMatchObject({ pressed: true, released: true, bounceMs: 0 });
  });

  it('lists the directions of the hat and how far each trigger goes', () => {
    const inputs = inputsOf((bench) => {
      for (const angle of [90, 0, 270]) {
        bench.pad.hand.pressHat(angle);
        bench.wait(0.1);
        bench.pad.hand.pressHat(null);
        bench.wait(0.1);
      }
      bench.pad.hand.pull('left', 0.8);
      bench.wait(0.1);
      bench.pad.hand.pull('left', 0);
      bench.wait(0.1);
    });
    expect(inputs.hat).toEqual([0, 90, 270]);
    expect(inputs.triggers.left).toEqual({ min: 0, max: 204, back: 0, fieldMinimum: 0, fieldMaximum: 255 });
    expect(inputs.triggers.right).toMatchObject({ min: 0, max: 0 });
  });

  it('takes for where a trigger came back to the least value after the farthest', () => {
    const back = (values: readonly number[]) => {
      const track = makeTrack({ reportTimes: values.map((_, i) => 1000 * i) });
      const trigger = { t: Float64Array.from(values, (_, i) => 1000 * i), value: Float64Array.from(values) };
      const control = { logicalMinimum: 0, logicalMaximum: 255 } as FieldSource['control'];
      const triggers = { left: { control } as FieldSource };
      return measureInputs({
        ...track,
        layout: { ...track.layout, triggers },
        inputs: { buttons: [], hat: null, triggers: { left: trigger } },
      })?.triggers.left;
    };
    expect(back([0, 100, 255, 60, 40, 55])).toMatchObject({ min: 0, max: 255, back: 40 });
    // Let go, then pulled farther and held.
    expect(back([0, 200, 0, 255, 240])).toMatchObject({ min: 0, max: 255, back: 240 });
    // The same farthest value once more is no new one.
    expect(back([0, 255, 3, 255])).toMatchObject({ max: 255, back: 3 });
    expect(back([7])).toMatchObject({ min: 7, max: 7, back: 7 });
    expect(back([Number.NaN, 9, 5])).toMatchObject({ min: 5, max: 9, back: 5 });
    expect(back([Number.NaN])).toBeUndefined();
  });

  it('is null for a log without readings', () => {
    expect(measureInputs(makeTrack({}))).toBeNull();
  });
});
