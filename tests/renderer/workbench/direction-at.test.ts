import { describe, expect, it } from 'vitest';
import { directionAlong, directionByKey } from '../../../renderer/workbench/direction-at.ts';

describe('directionAlong', () => {
  it('takes the nearest of the 72 directions, and 0 again at 360 degrees', () => {
    expect([0, 57.4, 57.6, 359, 360].map(directionAlong)).toEqual([0, 55, 60, 0, 0]);
  });

  it('points at nothing outside of the axis', () => {
    expect([-3, 363].map(directionAlong)).toEqual([null, null]);
  });
});

describe('directionByKey', () => {
  it('goes along the axis by steps and strides, around its ends', () => {
    expect(directionByKey('ArrowRight', 355)).toBe(0);
    expect(directionByKey('ArrowLeft', 0)).toBe(355);
    expect(directionByKey('ArrowUp', 90)).toBe(95);
    expect(directionByKey('PageDown', 20)).toBe(335);
    expect([directionByKey('Home', 90), directionByKey('End', 90)]).toEqual([0, 355]);
  });

  it('leaves other keys alone', () => {
    expect([directionByKey('Tab', 0), directionByKey('a', 0), directionByKey('Enter', 0)]).toEqual([null, null, null]);
  });
});
