import { describe, expect, it } from 'vitest';
import { backwardPlaces, backwardShare } from '../../../core/measure/backwards.ts';
import { createRandom } from '../../../core/numeric/random.ts';

const travel = { from: 0, to: 1000 };
/** Sweeps from 0 to 1000 and back in turns, ten counts a reading; `at(count, sweep)` says what a reading holds. */
function sweepsOf(many: number, at: (count: number, sweep: number) => number): Float64Array[] {
  return Array.from({ length: many }, (_, sweep) =>
    Float64Array.from({ length: 101 }, (__, i) => at(sweep % 2 === 0 ? 10 * i : 1000 - 10 * i, sweep)),
  );
}

describe('the share of readings that lie behind', () => {
  it('counts those off the farthest one by more than four σ and two steps, whichever way the sweep goes', () => {
    const sweeps = sweepsOf(2, (count, sweep) =>
      count === (sweep === 0 ? 510 : 490) ? 500 + (sweep === 0 ? -10 : 10) : count,
    );
    // 510 reads 490 after 500 was seen, 490 reads 510: each 10 behind.
    expect(backwardShare(sweeps, 0, 4)).toBe(2 / 202);
    expect(backwardShare(sweeps, 2.4, 1)).toBe(2 / 202);
    expect(backwardShare(sweeps, 2.5, 1)).toBe(0);
    expect(backwardShare(sweeps, 0, 5)).toBe(0);
    expect(backwardShare([], 0, 1)).toBeNull();
  });
});

describe('the places where sweeps go back', () => {
  const worn = (sweeps: readonly number[]) => (count: number, sweep: number) =>
    sweeps.includes(sweep) && count === 300 ? 330 : count;

  it('are where several do, each from the farthest reading down to the one behind it', () => {
    // Up, 330 is read for 300 and 310 after it; down, 330 is read again after 310.
    expect(backwardPlaces(sweepsOf(12, worn([0, 3, 4, 7])), 1, 1, travel)).toEqual([{ from: 310, to: 330, sweeps: 4 }]);
    expect(backwardPlaces(sweepsOf(4, worn([0, 1, 3])), 1, 1, travel)).toEqual([{ from: 310, to: 330, sweeps: 3 }]);
  });

  it('are none where one or two of them do, as a hand may', () => {
    for (const few of [[], [5], [5, 6]]) expect(backwardPlaces(sweepsOf(12, worn(few)), 1, 1, travel)).toEqual([]);
  });

  it('are none at the ends, where a stick bounces off its gate, nor where a push goes back far', () => {
    const bounce = (count: number, sweep: number) => (sweep % 2 === 0 && count === 990 ? 970 : count);
    expect(backwardPlaces(sweepsOf(12, bounce), 1, 1, travel)).toEqual([]);
    const push = (count: number) => (count === 500 ? 300 : count);
    expect(backwardPlaces(sweepsOf(12, push), 1, 1, travel)).toEqual([]);
    const short = (count: number) => (count === 500 ? 400 : count);
    expect(backwardPlaces(sweepsOf(12, short), 1, 1, travel)).toHaveLength(1);
  });

  it('are two where two stretches are worn, the longer first', () => {
    const two = (count: number) => (count === 300 ? 320 : count === 700 ? 650 : count);
    expect(backwardPlaces(sweepsOf(8, two), 1, 1, travel)?.map(({ sweeps }) => sweeps)).toEqual([8, 8]);
    const [first, second] = backwardPlaces(sweepsOf(8, two), 1, 1, travel) ?? [];
    expect(first?.from).toBeGreaterThanOrEqual(650);
    expect(second?.to).toBeLessThanOrEqual(320);
  });

  it('are told of hands that go back anywhere in one survey of a hundred at most', () => {
    const random = createRandom(7);
    let told = 0;
    for (let survey = 0; survey < 400; survey += 1) {
      const sweeps = sweepsOf(12, (count) => count).map((sweep) => {
        const back = random.next() < 0.6 ? Math.floor(4 + 90 * random.next()) : -1;
        return sweep.map((count, i) => (i === back ? (sweep[back - 3] ?? 0) : count));
      });
      if (backwardPlaces(sweeps, 1, 1, travel)?.length !== 0) told += 1;
    }
    expect(told).toBeLessThanOrEqual(8);
  });

  it('are unknown with fewer than three sweeps', () => {
    for (const few of [0, 1, 2]) expect(backwardPlaces(sweepsOf(few, worn([0, 1])), 1, 1, travel)).toBeNull();
    expect(backwardPlaces(sweepsOf(3, worn([])), 1, 1, travel)).toEqual([]);
  });
});
