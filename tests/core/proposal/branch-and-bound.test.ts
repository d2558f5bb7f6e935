import { describe, expect, it } from 'vitest';
import { minimiseWhole, type WholeProblem } from '../../../core/proposal/branch-and-bound.ts';

/** How far a box keeps from a place along one axis. */
function least(low: number, high: number, place: number): number {
  return Math.max(0, low - place, place - high);
}

/** Distance from a place, along the axes; the bound is exact. `asked` lists every point whose value was asked for. */
function distanceFrom(place: readonly number[], wish: Partial<WholeProblem> = {}) {
  const asked: (readonly number[])[] = [];
  const problem: WholeProblem = {
    low: place.map(() => 1),
    high: place.map(() => 1000),
    bound: (low, high) => place.reduce((sum, one, i) => sum + least(low[i]!, high[i]!, one), 0),
    value(point) {
      asked.push(point);
      return place.reduce((sum, one, i) => sum + Math.abs(point[i]! - one), 0);
    },
    change: () => 0,
    guess: place.map(() => 1),
    ...wish,
  };
  return { problem, asked };
}

describe('minimiseWhole', () => {
  it('finds the least value inside, at the ends of the ranges and in a range of one number', () => {
    expect(minimiseWhole(distanceFrom([700, 3]).problem)).toEqual([700, 3]);
    expect(minimiseWhole(distanceFrom([1, 1000]).problem)).toEqual([1, 1000]);
    expect(minimiseWhole(distanceFrom([5000, 0]).problem)).toEqual([1000, 1]);
    expect(minimiseWhole(distanceFrom([8], { low: [4], high: [4] }).problem)).toEqual([4]);
    expect(minimiseWhole(distanceFrom([8], { low: [4], high: [5] }).problem)).toEqual([5]);
  });

  it('has none where a range is empty or nothing is allowed', () => {
    expect(minimiseWhole(distanceFrom([5, 5], { low: [1, 7], high: [9, 6] }).problem)).toBeNull();
    expect(minimiseWhole(distanceFrom([5], { value: () => Infinity }).problem)).toBeNull();
    expect(minimiseWhole(distanceFrom([5], { value: () => Number.NaN }).problem)).toBeNull();
  });

  it('passes over what is not allowed', () => {
    const value = ([x = 0]: readonly number[]) => (x % 7 === 0 && x > 40 ? x : Infinity);
    expect(minimiseWhole(distanceFrom([1], { value, bound: (low) => low[0]! }).problem)).toEqual([42]);
  });

  it('looks into no box that its bound forbids', () => {
    const forbidden = distanceFrom([5], { bound: () => Infinity });
    // The guess alone is looked at.
    expect(minimiseWhole(forbidden.problem)).toEqual([1]);
    expect(forbidden.asked).toEqual([[1]]);
  });

  it('rounds the guess and brings it into the ranges before it looks there', () => {
    const first = (guess: readonly number[]) => {
      const { problem, asked } = distanceFrom([500, 500], { guess });
      minimiseWhole(problem);
      return asked[0];
    };
    expect(first([-3, 2000])).toEqual([1, 1000]);
    expect(first([12.6, 12.4])).toEqual([13, 12]);
  });

  it('takes the smallest change among equal values, and takes values as equal that only rounding parts', () => {
    const change = ([x = 0]: readonly number[]) => Math.abs(x - 321);
    expect(minimiseWhole(distanceFrom([1], { value: () => 2, bound: () => 2, change }).problem)).toEqual([321]);
    const rounded = ([x = 0]: readonly number[]) => 2 + (x % 2) * 5e-13;
    expect(minimiseWhole(distanceFrom([1], { value: rounded, bound: () => 2, change }).problem)).toEqual([321]);
    const apart = ([x = 0]: readonly number[]) => 2 + (x % 2) * 5e-12;
    const found = minimiseWhole(distanceFrom([1], { value: apart, bound: () => 2, change }).problem);
    expect(found?.[0]).toBeOneOf([320, 322]);
  });

  it('gives up every box that cannot hold a better value, and needs few looks therefore', () => {
    const { problem, asked } = distanceFrom([700, 3]);
    minimiseWhole(problem);
    // Two ranges of a thousand are halved ten times each.
    expect(asked.length).toBeLessThanOrEqual(1 + 2 * 20 + 4);
  });

  it('halves the side whose ends lie farthest apart as a ratio', () => {
    const boxes: number[][] = [];
    const { problem } = distanceFrom([1, 900], {
      low: [1, 500],
      high: [4, 1000],
      bound(low, high) {
        boxes.push([...low, ...high]);
        return 0;
      },
    });
    minimiseWhole(problem);
    expect(boxes.slice(0, 3)).toEqual([
      [1, 500, 4, 1000],
      [1, 500, 2, 1000],
      [3, 500, 4, 1000],
    ]);
  });
});
