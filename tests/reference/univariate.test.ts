import { describe, expect, it } from 'vitest';
import { overlappingAllanDeviation } from '../../core/numeric/allan.ts';
import { mean } from '../../core/numeric/mean.ts';
import { standardDeviation } from '../../core/numeric/variance.ts';
import { expectRelative, expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

const { datasets } = readGolden('nist_strd_univariate') as {
  datasets: Record<string, { mean: string; sd: string; lag1: string; data: number[] }>;
};

/** Large means with small scatter are made to break one-pass sums; the source's own tests allow them more. */
const deviationTolerance: Record<string, number> = { NumAcc3: 1e-9, NumAcc4: 1e-7 };

describe('NIST StRD, univariate summary statistics (seen)', () => {
  it('has the data sets at hand', () => {
    expect(Object.keys(datasets).length).toBeGreaterThanOrEqual(6);
  });

  it.each(Object.entries(datasets))('%s: the mean to 1e-14 and the deviation to its tolerance', (name, set) => {
    expectRelative(mean(set.data), Number(set.mean), 1e-14);
    expectRelative(standardDeviation(set.data), Number(set.sd), deviationTolerance[name] ?? 1e-13);
  });

  it.each(Object.entries(datasets))(
    '%s: Allan deviation and deviation together give the lag-1 autocorrelation to 1e-9',
    (name, { data, lag1 }) => {
      // Σ(yᵢ − yᵢ₋₁)² = 2Σ(y − ȳ)² − (y₁ − ȳ)² − (yₙ − ȳ)² − 2Σ(yᵢ − ȳ)(yᵢ₋₁ − ȳ), and the left is 2(n − 1) Allan variances.
      const n = data.length;
      const middle = mean(data);
      const about = (n - 1) * standardDeviation(data) ** 2;
      const steps = 2 * (n - 1) * overlappingAllanDeviation(data, 1)! ** 2;
      const ends = (data[0]! - middle) ** 2 + (data.at(-1)! - middle) ** 2;
      expectWithin(1 - (steps + ends) / (2 * about), Number(lag1), deviationTolerance[name] ?? 1e-9);
    },
  );
});
