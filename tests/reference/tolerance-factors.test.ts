import { describe, expect, it } from 'vitest';
import { gammaTail } from '../../core/numeric/gamma-tail.ts';
import { normalCdf } from '../../core/numeric/normal-cdf.ts';
import { oneAxisToleranceFactor } from '../../core/numeric/one-axis-tolerance.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Factors {
  readonly table: Record<string, Record<string, { k2: number; howe: number }>>;
  readonly seenPublished: {
    berthouexBrown: Record<string, number[]>;
    nist7263: { N: number; z1: number; zg: number; chi2: number; k2: number };
  };
  readonly computed: { N43: { k2exact: number }; N40: { k2exact: number } };
}

const factors = readGolden('tolerance_factors') as Factors;
const rows = Object.entries(factors.table).flatMap(([n, row]) =>
  Object.entries(row).map(([content, { k2, howe }]) => ({ n: Number(n), content: Number(content), k2, howe })),
);
const published = Object.entries(factors.seenPublished.berthouexBrown);

describe('two-sided tolerance factors of one axis', () => {
  it('agree with the exact method at 95 % confidence to 5e-4 (computed with SciPy)', () => {
    expect(rows.length).toBeGreaterThan(40);
    for (const { n, content, k2 } of rows) expectWithin(oneAxisToleranceFactor(n, content, 0.95)!, k2, 5e-4);
  });

  it.each(published)('n = %s: round to Berthouex and Brown, Table 21.1 (seen)', (n, [at90, at95, at99]) => {
    // Half a unit of the second decimal, and the rounding of the sum.
    expectWithin(oneAxisToleranceFactor(Number(n), 0.9, 0.95)!, at90!, 0.005 + 1e-4);
    expectWithin(oneAxisToleranceFactor(Number(n), 0.95, 0.95)!, at95!, 0.005 + 1e-4);
    expectWithin(oneAxisToleranceFactor(Number(n), 0.99, 0.95)!, at99!, 0.005 + 1e-4);
  });

  it('lie within 1 % of the approximation of NIST 7.2.6.3 from 10 draws on (computed)', () => {
    for (const { n, content, howe } of rows.filter((row) => row.n >= 10)) {
      expectWithin(oneAxisToleranceFactor(n, content, 0.95)!, howe, 0.01 * howe);
    }
  });

  it('at 99 % confidence are those of the exact method for 43 and 40 draws (computed)', () => {
    expectWithin(oneAxisToleranceFactor(43, 0.9, 0.99)!, factors.computed.N43.k2exact, 1e-9);
    expectWithin(oneAxisToleranceFactor(40, 0.9, 0.99)!, factors.computed.N40.k2exact, 1e-9);
  });

  it('NIST 7.2.6.3: χ² and z behind the approximation for 43 draws, and the exact factor beside it (seen)', () => {
    const { N, z1, zg, chi2, k2 } = factors.seenPublished.nist7263;
    expectWithin(normalCdf(z1), 0.9, 1e-8);
    expectWithin(normalCdf(zg), 0.99, 1e-8);
    expectWithin(gammaTail((N - 1) / 2, chi2 / 2), 0.99, 1e-8);
    expectWithin(oneAxisToleranceFactor(N, 0.9, 0.99)!, k2, 0.01 * k2);
  });
});
