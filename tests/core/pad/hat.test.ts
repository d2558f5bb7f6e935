import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { dPadDirection, hatDirection } from '../../../core/pad/hat.ts';

interface HatCase {
  readonly logical: readonly [number, number];
  readonly map?: Readonly<Record<string, number>>;
  readonly linuxDirectionRule?: string;
  readonly cases?: readonly (readonly [value: number, direction: number])[];
  readonly nullExamples: readonly number[];
}

const { hat: cases } = JSON.parse(
  readFileSync(path.join(import.meta.dirname, '../../golden/hid_items.json'), 'utf8'),
) as {
  hat: HatCase[];
};

/** HID 1.11, 5.10 and the rule that Linux turns codes into eight directions by; where each was seen stands in the file. */
describe.each(cases)('a hat of $logical', ({ logical, map, cases: directions, nullExamples }) => {
  const hat = { logicalMinimum: logical[0], logicalMaximum: logical[1] };

  it('gives the stated angles', () => {
    for (const [value, degrees] of Object.entries(map ?? {})) expect(hatDirection(hat, Number(value))).toBe(degrees);
    for (const [value, direction] of directions ?? []) {
      expect(Math.floor(hatDirection(hat, value) / 45) + 1).toBe(direction);
    }
    expect(Object.keys(map ?? {}).length + (directions ?? []).length).toBeGreaterThan(0);
  });

  it('gives none for every other code', () => {
    for (const value of nullExamples) expect(hatDirection(hat, value)).toBeNaN();
    expect(hatDirection(hat, Number.NaN)).toBeNaN();
  });
});

describe('a hat whose codes are the angle', () => {
  it.each([
    [315, 1],
    [360, 1],
    [359, 1],
    [31_500, 100],
    [36_000, 100],
    [3600, 10],
  ])('0 … %i counts %i to a degree', (logicalMaximum, counts) => {
    for (const degrees of [0, 45, 90, 225, 315])
      expect(hatDirection({ logicalMinimum: 0, logicalMaximum }, degrees * counts)).toBeCloseTo(degrees, 9);
  });

  it('takes 360 for 0', () => {
    expect(hatDirection({ logicalMinimum: 0, logicalMaximum: 360 }, 360)).toBe(0);
  });
});

describe('a direction pad of four switches', () => {
  it.each([
    ['up', true, false, false, false, 0],
    ['up and right', true, true, false, false, 45],
    ['right', false, true, false, false, 90],
    ['right and down', false, true, true, false, 135],
    ['down', false, false, true, false, 180],
    ['down and left', false, false, true, true, 225],
    ['left', false, false, false, true, 270],
    ['left and up', true, false, false, true, 315],
    ['left, right and up', true, true, false, true, 0],
  ])('points %s', (_name, up, right, down, left, degrees) => {
    expect(dPadDirection(up, right, down, left)).toBeCloseTo(degrees, 9);
  });

  it('points nowhere with none or with opposites down', () => {
    expect(dPadDirection(false, false, false, false)).toBeNaN();
    expect(dPadDirection(true, false, true, false)).toBeNaN();
    expect(dPadDirection(true, true, true, true)).toBeNaN();
  });
});
