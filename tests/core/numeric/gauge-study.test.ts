import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyGauge, type GaugeReadings } from '../../../core/numeric/gauge-study.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { standardDeviation } from '../../../core/numeric/variance.ts';
import { expectRelative, expectWithin } from '../../support/expect-close.ts';

const seeded = { seed: 20_261_138, numRuns: 60 };

const study = fc
  .record({
    operators: fc.integer({ min: 1, max: 4 }),
    parts: fc.integer({ min: 1, max: 5 }),
    trials: fc.integer({ min: 2, max: 4 }),
  })
  .chain(({ operators, parts, trials }) => {
    const reading = fc.integer({ min: -500, max: 500 }).map((value) => value / 8);
    const cell = fc.array(reading, { minLength: trials, maxLength: trials });
    const row = fc.array(cell, { minLength: parts, maxLength: parts });
    return fc.array(row, { minLength: operators, maxLength: operators });
  });

function change(readings: GaugeReadings, by: (value: number) => number): number[][][] {
  return readings.map((of) => of.map((cell) => cell.map(by)));
}

describe('studyGauge', () => {
  it('shares out the whole sum of squares', () => {
    fc.assert(
      fc.property(study, (readings) => {
        const { parts, operators, interaction, repeatability, total } = studyGauge(readings)!.squares;
        expectWithin(parts + operators + interaction + repeatability, total, 1e-9 * (total + 1));
      }),
      seeded,
    );
  });

  it('does not mind a shift, scales with the square, and forgets the order of operators, parts and trials', () => {
    fc.assert(
      fc.property(study, (readings) => {
        const found = studyGauge(readings)!.variances;
        const moved = change(readings, (value) => 40 + 4 * value).map((of) =>
          of.map((cell) => cell.toReversed()).toReversed(),
        );
        const other = studyGauge(moved.toReversed())!.variances;
        expectWithin(other.gauge, 16 * found.gauge, 1e-8 * (found.total + 1));
        expectWithin(other.part ?? 0, 16 * (found.part ?? 0), 1e-8 * (found.total + 1));
      }),
      seeded,
    );
  });

  it('finds the components that readings were made of', () => {
    const random = createRandom(8);
    const normals = (count: number, size: number): number[] =>
      Array.from({ length: count }, () => size * random.normal());
    const [ofParts, ofOperators] = [normals(300, 5), normals(300, 2)];
    const readings = ofOperators.map((operator) =>
      ofParts.map((part) => normals(2, 0.5).map((off) => operator + part + off)),
    );
    const { variances, interactionP } = studyGauge(readings)!;
    expectRelative(variances.repeatability, 0.25, 0.02);
    expectRelative(variances.reproducibility!, 4, 0.25);
    expectRelative(variances.part!, 25, 0.25);
    expect(interactionP).toBeGreaterThan(0.001);
  });

  it('keeps an interaction apart where the readings prove one', () => {
    const readings = [0, 1, 2].map((operator) =>
      [0, 1, 2, 3].map((part) => [0, 0.01, -0.01].map((off) => (operator === part ? 5 : 0) + off)),
    );
    const { isPooled, interactionP, variances } = studyGauge(readings)!;
    expect(isPooled).toBe(false);
    expect(interactionP).toBeLessThan(1e-6);
    expectRelative(variances.repeatability, 1e-4, 1e-9);
    expect(variances.reproducibility).toBeGreaterThan(1);
  });

  it('of one operator and one part leaves the deviation of the trials, and null for what cannot be told', () => {
    const trials = [3, 5, 4, 4.5];
    const { variances, interactionP, degrees } = studyGauge([[trials]])!;
    expectRelative(Math.sqrt(variances.repeatability), standardDeviation(trials), 1e-12);
    expect(variances.reproducibility).toBeNull();
    expect(variances.part).toBeNull();
    expect(interactionP).toBeNull();
    expect(degrees).toBe(3);
  });

  it('takes readings that never differ for perfect, not for no number', () => {
    const { variances, interactionP } = studyGauge([0, 1].map(() => [7, 7].map((value) => [value, value])))!;
    expect(variances.total).toBe(0);
    expect(interactionP).toBe(1);
  });

  it('says nothing of single trials, ragged tables, and readings that are no number', () => {
    expect(studyGauge([])).toBeNull();
    expect(studyGauge([[]])).toBeNull();
    expect(studyGauge([[[1], [2]]])).toBeNull();
    expect(studyGauge([[[1, 2], [3]]])).toBeNull();
    expect(
      studyGauge([
        [[1, 2]],
        [
          [1, 2],
          [3, 4],
        ],
      ]),
    ).toBeNull();
    expect(studyGauge([[[1, NaN]]])).toBeNull();
  });
});
