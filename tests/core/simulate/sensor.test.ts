import { describe, expect, it } from 'vitest';
import { createChance } from '../../../core/simulate/chance.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { convert, tiltOfPart } from '../../../core/simulate/sensor.ts';

const quiet = {
  middle: 2000,
  gain: 1000,
  up: 1,
  bend: 0,
  reach: { minus: 1, plus: 0.8 },
  noise: 0,
  clip: { low: 0, high: 4095 },
  worn: [],
} as const;

describe('the sensor', () => {
  it('turns tilt into whole counts by its gain, its middle and its reach on either side', () => {
    const chance = createChance(1, 1);
    expect(convert(quiet, 0, chance)).toBe(2000);
    expect(convert(quiet, 0.5, chance)).toBe(2400);
    expect(convert(quiet, -0.5, chance)).toBe(1500);
    expect(convert({ ...quiet, up: -1 }, -0.5, chance)).toBe(2500);
    expect(convert({ ...quiet, bend: -0.1 }, -1, chance)).toBe(1100);
  });

  it('gives no count outside of its limits or of the converter', () => {
    const chance = createChance(1, 1);
    expect(convert({ ...quiet, clip: { low: 1900, high: 2100 } }, 1, chance)).toBe(2100);
    expect(convert({ ...quiet, clip: { low: 1900, high: 2100 } }, -1, chance)).toBe(1900);
    expect(convert({ ...quiet, clip: { low: -9999, high: 9999 } }, 9, chance)).toBe(4095);
    expect(convert({ ...quiet, clip: { low: -9999, high: 9999 } }, -9, chance)).toBe(0);
  });

  it('is unsteady inside of a worn zone only', () => {
    const worn = { ...quiet, worn: [{ from: 0.4, to: 0.6, noise: 10, liftShare: 0.1, lift: 100 }] };
    const chance = createChance(1, 1);
    const spreadAt = (tilt: number): number =>
      new Set(Array.from({ length: 200 }, () => convert(worn, tilt, chance))).size;
    expect(spreadAt(0.3)).toBe(1);
    expect(spreadAt(0.5)).toBeGreaterThan(20);
    expect(spreadAt(0.7)).toBe(1);
  });

  it('sees the tilt turned with the part', () => {
    const stick = { ...demos.healthy.build.sticks.left, turnDegrees: 90, crossTalk: { xFromY: 0, yFromX: 0 } };
    const part = tiltOfPart(stick, { x: 0, y: 1 });
    expect(part.x).toBeCloseTo(1, 12);
    expect(part.y).toBeCloseTo(0, 12);
  });
});
