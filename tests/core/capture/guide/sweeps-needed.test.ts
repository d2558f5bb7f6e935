import { expect, test } from 'vitest';
import { sweepsNeeded } from '../../../../core/capture/guide/sweeps-needed.ts';
import type { StickFields } from '../../../../core/pad/stick.ts';
import { sensorFields } from '../../../support/fields.ts';

const eight = {
  x: { ...sensorFields.x, minimum: 0, maximum: 255 },
  y: { ...sensorFields.y, minimum: 0, maximum: 255 },
} satisfies StickFields;

test('finer counts and slower reports take more sweeps, within what a hand bears', () => {
  // 15 · 0.65 · 4095 / (1000 · 3 · 2) = 6.7, of which 6 are asked for: 13.5 visits a count.
  expect(sweepsNeeded(sensorFields, 1000)).toBe(6);
  expect(sweepsNeeded(sensorFields, 2000)).toBe(4);
  expect(sweepsNeeded(sensorFields, 125)).toBe(6);
  expect(sweepsNeeded(eight, 250)).toBe(2);
  expect(sweepsNeeded(eight, 125)).toBe(4);
});

test('with a rate that is not known the least is asked for', () => {
  expect(sweepsNeeded(sensorFields, null)).toBe(2);
  expect(sweepsNeeded(sensorFields, 0)).toBe(2);
});
