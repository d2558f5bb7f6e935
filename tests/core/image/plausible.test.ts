import { describe, expect, it } from 'vitest';
import { isPlausible, whyImplausible } from '../../../core/image/plausible.ts';
import type { AxisMapping } from '../../../core/mapping/mapping.ts';

const good: AxisMapping = { min: 4000, centre: 32_000, max: 61_000 };
const rule = { bits: 16, leastSpan: 16 };
const y = (axis: AxisMapping) => ({ x: good, y: axis });

describe('numbers of 16 bits', () => {
  it('are plausible where the rest is near the middle of the range', () => {
    expect(isPlausible(y(good), rule)).toBe(true);
    expect(isPlausible(y({ min: 0, centre: 16_383, max: 65_532 }), rule)).toBe(true);
  });

  it.each([
    [{ min: 0, centre: 16_383, max: 65_533 }, 'with one side more than 3 times as wide as the other'],
    [{ min: 100, centre: 60_000, max: 60_100 }, 'with one side more than 3 times as wide as the other'],
    [{ min: 30_000, centre: 30_015, max: 60_000 }, 'with less than 16 counts to one side of the centre'],
    [{ min: 4000, centre: 32_000, max: 65_536 }, 'beyond the 16 bits of a count'],
    [{ min: -1, centre: 32_000, max: 61_000 }, 'beyond the 16 bits of a count'],
  ])('are not where they are %j', (axis, why) => {
    expect(isPlausible(y(axis), rule)).toBe(false);
    expect(isPlausible({ x: axis, y: good }, rule)).toBe(false);
    expect(whyImplausible(y(axis), rule)).toBe(`y would be ${axis.min}, ${axis.centre}, ${axis.max}, ${why}.`);
  });
});

it('bytes that are no numbers of the codec are told so', () => {
  expect(whyImplausible(null, rule)).toBe('The bytes hold numbers of more bits than the codec has.');
});
