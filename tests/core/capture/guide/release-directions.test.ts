import { describe, expect, it } from 'vitest';
import { directionWords } from '../../../../core/capture/guide/direction-words.ts';
import { releaseDirection } from '../../../../core/capture/guide/release-directions.ts';

function widestGap(directions: readonly number[]): number {
  const sorted = directions.toSorted((a, b) => a - b);
  return Math.max(...sorted.map((one, i) => ((sorted[(i + 1) % sorted.length] ?? 0) - one + 360) % 360 || 360));
}

describe('releaseDirection', () => {
  it('spreads 24 releases 15° apart', () => {
    const all = Array.from({ length: 24 }, (_, i) => releaseDirection(i));
    expect(all.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 24 }, (_, i) => 15 * i));
  });

  it('has spread releases wherever it is broken off, opposite ones first', () => {
    expect([0, 1, 2, 3].map(releaseDirection)).toEqual([0, 180, 90, 270]);
    for (let taken = 4; taken <= 72; taken += 1) {
      const widest = widestGap(Array.from({ length: taken }, (_, i) => releaseDirection(i)));
      expect(widest).toBeLessThanOrEqual(taken < 8 ? 90 : taken < 24 ? 45 : 15);
    }
  });

  it('does not ask for a direction twice before all of 72 were asked for', () => {
    expect(new Set(Array.from({ length: 72 }, (_, i) => releaseDirection(i))).size).toBe(72);
  });
});

it('says directions in words that a hand can follow', () => {
  expect([0, 90, 180, 270].map(directionWords)).toEqual(['right', 'up', 'left', 'down']);
  expect([45, 135, 225, 315].map(directionWords)).toEqual([
    'to the upper right',
    'to the upper left',
    'to the lower left',
    'to the lower right',
  ]);
  expect([15, 75, 345].map(directionWords)).toEqual([
    'right and a little up',
    'up and a little right',
    'right and a little down',
  ]);
  expect([30, 240].map(directionWords)).toEqual([
    'between right and the upper right',
    'between down and the lower left',
  ]);
  expect(directionWords(-10)).toBe('right and a little down');
});
