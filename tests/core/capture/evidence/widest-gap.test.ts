import { expect, it } from 'vitest';
import { widestGap } from '../../../../core/capture/evidence/widest-gap.ts';

it('widestGap counts 5° for each direction that is open, and names its ends', () => {
  expect(widestGap([])).toEqual({ degrees: 0, from: 0, to: 0 });
  expect(widestGap([40])).toEqual({ degrees: 5, from: 40, to: 40 });
  expect(widestGap([110, 40, 100, 105])).toEqual({ degrees: 15, from: 100, to: 110 });
});

it('widestGap takes one that passes 0° as one', () => {
  expect(widestGap([0, 5, 90, 95, 100, 350, 355])).toEqual({ degrees: 20, from: 350, to: 5 });
});

it('widestGap takes the first from 0° on of equally wide ones, in whatever order they are given', () => {
  expect(widestGap([200, 205, 20, 25])).toEqual({ degrees: 10, from: 20, to: 25 });
  expect(widestGap([20, 25, 200, 205])).toEqual({ degrees: 10, from: 20, to: 25 });
});

it('widestGap is all around where nothing is covered, and all but one direction where one is', () => {
  const all = Array.from({ length: 72 }, (_, k) => 5 * k);
  expect(widestGap(all)).toEqual({ degrees: 360, from: 0, to: 355 });
  expect(widestGap(all.filter((angle) => angle !== 90))).toEqual({ degrees: 355, from: 95, to: 85 });
});
