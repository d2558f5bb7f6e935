import { describe, expect, it } from 'vitest';
import { mean } from '../../core/numeric/mean.ts';
import { standardDeviation } from '../../core/numeric/variance.ts';
import { expectRelative } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

const { datasets } = readGolden('nist_strd_univariate') as {
  datasets: Record<string, { mean: string; sd: string; data: number[] }>;
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
});
