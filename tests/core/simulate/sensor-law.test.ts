import { describe, expect, it } from 'vitest';
import { respond } from '../../../core/simulate/sensor-law.ts';

const laws = [{ kind: 'potentiometer' }, { kind: 'hall', fullDegrees: 23 }, { kind: 'tmr', saturation: 0.3 }] as const;

describe('the law of a sensor', () => {
  it('has slope 1 at no tilt and is odd', () => {
    for (const law of laws) {
      expect(respond(1e-6, law) / 1e-6).toBeCloseTo(1, 6);
      expect(respond(-0.7, law)).toBe(-respond(0.7, law));
    }
  });

  it('falls short of its line by the published amount for a magnet that turns 23°, and flattens toward saturation', () => {
    expect(respond(1, laws[0])).toBe(1);
    // Greatest deviation of a sine from its end-point line at 23°: 1.05 % of full scale (computed from the law).
    const end = respond(1, laws[1]);
    const deviations = Array.from({ length: 101 }, (_, i) => respond(i / 100, laws[1]) / end - i / 100);
    expect(Math.max(...deviations)).toBeCloseTo(0.0105, 3);
    expect(respond(1, laws[2])).toBeCloseTo(Math.tanh(0.3) / 0.3, 12);
  });
});
