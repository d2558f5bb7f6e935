import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distanceToTarget, scalePosition } from '../../../../renderer/pads/fitting/target-distance.ts';

const y = { lowEnd: 'up', highEnd: 'down' };

test('tells distance, side and whether it is inside; the edge of the tolerance is inside', () => {
  expect(distanceToTarget(2060, 2048, 20, y)).toEqual({ counts: 12, inside: true, ratio: 0.6, side: 'down' });
  expect(distanceToTarget(2028, 2048, 20, y)).toMatchObject({ inside: true, side: 'up', ratio: 1 });
  expect(distanceToTarget(2027.9, 2048, 20, y).inside).toBe(false);
  expect(distanceToTarget(2048, 2048, 20, y).side).toBe('on target');
});

test('the scale is odd, never runs back and stays within −1 … 1', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.double({ min: -500, max: 500, noNaN: true }),
      (one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        expect(scalePosition(low, 100)).toBeLessThanOrEqual(scalePosition(high, 100));
        expect(scalePosition(-one, 100)).toBeCloseTo(-scalePosition(one, 100), 12);
        expect(Math.abs(scalePosition(one, 100))).toBeLessThanOrEqual(1);
      },
    ),
    { seed: 5 },
  );
});

test('the tolerance ends at a quarter of the scale, the furthest distance at its end', () => {
  expect(scalePosition(1, 100)).toBe(0.25);
  expect(scalePosition(10, 100)).toBeCloseTo(0.625, 12);
  expect(scalePosition(100, 100)).toBe(1);
});
