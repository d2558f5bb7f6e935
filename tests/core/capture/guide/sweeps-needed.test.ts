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

test('one sweep more is asked for as soon as the counts take more than those before', () => {
  // 15 · 0.65 · 800 counts / (rate · 6 s) is just 3 at 433.3 a second.
  const wide = { x: { ...sensorFields.x, maximum: 800 }, y: { ...sensorFields.y, maximum: 100 } } satisfies StickFields;
  const high = { x: wide.y, y: wide.x } satisfies StickFields;
  for (const fields of [wide, high]) {
    expect(sweepsNeeded(fields, 434)).toBe(3);
    expect(sweepsNeeded(fields, 433)).toBe(4);
  }
});
