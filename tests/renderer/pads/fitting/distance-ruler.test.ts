import { expect, test } from 'vitest';
import { distanceRuler } from '../../../../renderer/pads/fitting/distance-ruler.ts';
import { listAxes } from '../../../../renderer/pads/axis-list.ts';
import { smallLayout } from '../../support/small-pad.ts';

const [x] = listAxes(smallLayout);

test('marks powers of ten on both sides, outside of the band alone', () => {
  const ruler = distanceRuler({ ...x!, maximum: 4095 }, 2047.5, 20);
  expect(ruler.marks.map((mark) => mark.counts)).toEqual([100, -100, 1000, -1000]);
  expect(ruler.band).toBe(0.25);
  for (const mark of ruler.marks) {
    expect(ruler.positionOf(mark.counts)).toBe(mark.position);
    expect(Math.abs(mark.position)).toBeGreaterThan(ruler.band);
  }
});

test('a target at the end of the field still has a ruler that reaches the other end', () => {
  const ruler = distanceRuler(x!, 0, 2);
  expect(ruler.positionOf(255)).toBe(1);
  expect(ruler.positionOf(-255)).toBe(-1);
});

test('a tolerance as wide as the field leaves the band and no marks', () => {
  const ruler = distanceRuler(x!, 127.5, 255);
  expect(ruler.marks).toEqual([]);
  expect(ruler.positionOf(127.5)).toBeLessThan(ruler.band);
});
