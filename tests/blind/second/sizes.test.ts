import { describe, expect, it } from 'vitest';
import { faultNames } from './faults.ts';
import { gradedSizes } from './sizes.ts';
import { sizeIn } from './visible-sizes.ts';

describe('the sizes of curves', () => {
  it('begin where the bench asks for half of the draws, and rise', () => {
    const wanted = Object.fromEntries(
      faultNames.flatMap((name) => {
        const size = gradedSizes(name)?.wanted ?? null;
        return size === null ? [] : [[name, size]];
      }),
    );
    expect(wanted).toEqual({
      'off-centre-part': 2,
      'seat-tilt': 0.6,
      skew: 5,
      'short-side': 3,
      'dead-sector': 10,
      'dead-spot': 1,
      'worn-track': 0.5,
      contact: 10,
      noise: 3,
    });
    for (const name of faultNames) {
      const graded = gradedSizes(name);
      if (graded === null) continue;
      expect(graded.curve, name).toEqual(graded.curve.toSorted((a, b) => a - b));
      expect(graded.curve[graded.start], name).toBe(graded.wanted ?? graded.curve[graded.start]);
      expect(graded.curve.length - graded.start, name).toBe(6);
    }
  });

  it('hold no noise that is less than a sound part has', () => {
    expect(gradedSizes('noise')?.curve).toEqual([1.5, 2.25, 3, 4.5, 6, 9, 12, 18]);
    expect(gradedSizes('swapped-axes')).toBeNull();
  });
});

describe('the half-visible sizes', () => {
  const taken = { sensor12: { skew: 3 }, reported8: { skew: null } };

  it('are what a curve gave, null where it gave none, and else what the bench asks for', () => {
    expect(sizeIn(taken, 'sensor12', 'skew')).toBe(3);
    expect(sizeIn(taken, 'reported8', 'skew')).toBeNull();
    expect(sizeIn(taken, 'reported16', 'skew')).toBe(5);
    expect(sizeIn(taken, 'reported16', 'swapped-axes')).toBe(1);
  });
});
