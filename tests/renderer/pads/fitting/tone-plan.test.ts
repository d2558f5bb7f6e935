import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TONE_BEGINS, toneFor } from '../../../../renderer/pads/fitting/tone-plan.ts';

test('is steady inside the tolerance, its edge included', () => {
  expect(toneFor(0)).toEqual({ hertz: 880, pulses: 0 });
  expect(toneFor(1)).toEqual({ hertz: 880, pulses: 0 });
  expect(toneFor(1.001)?.pulses).toBeGreaterThan(0);
});

test('is silent far away and without a reading', () => {
  expect(toneFor(TONE_BEGINS)).toBeNull();
  expect(toneFor(Number.NaN)).toBeNull();
  expect(toneFor(Number.POSITIVE_INFINITY)).toBeNull();
  expect(toneFor(null)).toBeNull();
});

test('rises in pitch and pace as the reading comes near, and stays below the tone of inside', () => {
  const near = fc.double({ min: 1.0001, max: TONE_BEGINS - 0.0001, noNaN: true });
  fc.assert(
    fc.property(near, near, (one, other) => {
      const [closer, further] = one < other ? [one, other] : [other, one];
      expect(toneFor(closer)!.hertz).toBeGreaterThanOrEqual(toneFor(further)!.hertz);
      expect(toneFor(closer)!.pulses).toBeGreaterThanOrEqual(toneFor(further)!.pulses);
      expect(toneFor(closer)!.hertz).toBeLessThan(880);
    }),
    { seed: 7 },
  );
});
