import { expect } from 'vitest';

/** |actual − expected| ≤ tolerance, in the unit of both. */
export function expectWithin(actual: number | undefined, expected: number, tolerance: number): void {
  expect(Math.abs((actual ?? NaN) - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
}

/** The same relative to the expected value. */
export function expectRelative(actual: number | undefined, expected: number, tolerance: number): void {
  expectWithin(actual, expected, tolerance * Math.abs(expected));
}
