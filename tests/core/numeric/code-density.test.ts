import { describe, expect, it } from 'vitest';
import { rampTransitions, sineTransitions, stepErrors } from '../../../core/numeric/code-density.ts';
import { cycleErrors } from '../../../core/numeric/input-cycles.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { expectWithin } from '../../support/expect-close.ts';

/** A 5-bit converter with uneven steps between −1 and 1. */
const transitions = Array.from({ length: 31 }, (_, k) => -0.9375 + k / 16 + 0.012 * Math.sin(3 * k));

function histogram(values: Iterable<number>): number[] {
  const hits = new Array<number>(32).fill(0);
  for (const value of values) {
    const code = transitions.filter((at) => at <= value).length;
    hits[code] = hits[code]! + 1;
  }
  return hits;
}

describe('code density', () => {
  it('finds the transitions of a converter from an even ramp', () => {
    const hits = histogram(Array.from({ length: 200_000 }, (_, i) => -1 + i / 100_000));
    const found = rampTransitions(hits);
    for (const [k, at] of transitions.entries()) expectWithin(found[k]! / 100_000 - 1, at, 2e-5);
  });

  it('finds them from a sine that runs over both ends, at chance phases', () => {
    const random = createRandom(4);
    const samples = Array.from({ length: 300_000 }, () => 0.05 + 1.1 * Math.cos(2 * Math.PI * random.next()));
    const found = sineTransitions(histogram(samples), 0.05, 1.1);
    for (const [k, at] of transitions.entries()) expectWithin(found[k], at, 0.01);
  });

  it('gives the same errors whatever the unit of the transitions', () => {
    const { differential, integral } = stepErrors(transitions)!;
    const other = stepErrors(transitions.map((at) => 2048 + 1000 * at))!;
    for (const [k, error] of differential.entries()) expectWithin(other.differential[k], error, 1e-9);
    for (const [k, error] of integral.entries()) expectWithin(other.integral[k], error, 1e-9);
    expectWithin(integral.at(-1), 0, 1e-12);
  });

  it('says nothing without two transitions that rise', () => {
    expect(stepErrors([])).toBeNull();
    expect(stepErrors([1])).toBeNull();
    expect(stepErrors([1, 1])).toBeNull();
    expect(stepErrors([1, NaN])).toBeNull();
    expect(stepErrors(rampTransitions([0, 0, 0, 0]))).toBeNull();
    expect([...rampTransitions([])]).toEqual([]);
  });
});

describe('cycleErrors', () => {
  it('takes hysteresis within a pass and repeatability within a direction', () => {
    expect(
      cycleErrors({
        ascending: [
          [0, 1],
          [0, 4],
        ],
        descending: [
          [0, 3],
          [0, 4],
        ],
      }),
    ).toEqual({
      hysteresis: 2,
      repeatability: 3,
    });
  });

  it('says nothing of passes that do not match, and of readings that are no number', () => {
    expect(cycleErrors({ ascending: [], descending: [] })).toBeNull();
    expect(cycleErrors({ ascending: [[1]], descending: [] })).toBeNull();
    expect(cycleErrors({ ascending: [[1, 2]], descending: [[1]] })).toBeNull();
    expect(cycleErrors({ ascending: [[1, NaN]], descending: [[1, 2]] })).toBeNull();
  });
});
