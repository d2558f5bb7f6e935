import { describe, expect, it } from 'vitest';
import { combineUncertainty } from '../../core/numeric/combined-uncertainty.ts';
import { gammaTail } from '../support/gamma-tail.ts';
import { mean } from '../../core/numeric/mean.ts';
import { studentT } from '../../core/numeric/student-t.ts';
import { standardDeviation } from '../../core/numeric/variance.ts';
import { expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Gum {
  readonly typeA: { data: number[]; mean: number; sd: number; standardUncertaintyOfMean: number };
  readonly H1: {
    seen: { tableD1_nm: number[]; combined_nm: number };
    memory: { firstOrder_nm: number[]; nu: number[]; uc_nm: number; nuEff: number; t99: number };
    recomputed: { uc: number; nuEff: number };
  };
  readonly zarr13: { n: number; mean: number; sd: number; t: number; recomputed: [number, number] };
}

const gum = readGolden('gum') as Gum;
const table = readGolden('student_t') as {
  two_sided: Record<string, Record<string, number>>;
  infinity: Record<string, number>;
};

describe('JCGM 100, uncertainty of measurement', () => {
  it('4.4.3: mean, deviation and uncertainty of 20 temperatures (memory; recomputed)', () => {
    const { data, standardUncertaintyOfMean } = gum.typeA;
    expectWithin(mean(data), 100.145, 1e-9);
    expectWithin(standardDeviation(data), 1.489, 5e-4);
    expectWithin(standardDeviation(data) / Math.sqrt(data.length), 0.333, 5e-4);
    expectWithin(standardDeviation(data) / Math.sqrt(data.length), standardUncertaintyOfMean, 1e-12);
  });

  it('4.4.3: the 95 % interval of σ is 1.1323 to 2.1746 (computed)', () => {
    const { data } = gum.typeA;
    const degrees = data.length - 1;
    const beyond = (sigma: number): number =>
      gammaTail(degrees / 2, (degrees * standardDeviation(data) ** 2) / (2 * sigma ** 2));
    expectWithin(beyond(1.1323), 0.025, 1e-4);
    expectWithin(beyond(2.1746), 0.975, 1e-4);
  });

  it('H.1: the parts of NIST TN 1297 Table D.1 combine to 34 nm (seen)', () => {
    const { tableD1_nm, combined_nm } = gum.H1.seen;
    const combined = combineUncertainty(tableD1_nm.map((value) => ({ value, degrees: Infinity })));
    expectWithin(combined.value, combined_nm, 0.5);
    expect(combined.degrees).toBe(Infinity);
  });

  it('H.1: first-order parts give 32 nm with 16.7 degrees of freedom and t₉₉ 2.92 (memory; recomputed)', () => {
    const { firstOrder_nm, nu, uc_nm, nuEff, t99 } = gum.H1.memory;
    const combined = combineUncertainty(firstOrder_nm.map((value, i) => ({ value, degrees: nu[i]! })));
    expectWithin(combined.value, uc_nm, 0.5);
    expectWithin(combined.degrees, nuEff, 0.1);
    expectWithin(combined.value, gum.H1.recomputed.uc, 1e-9);
    expectWithin(combined.degrees, gum.H1.recomputed.nuEff, 1e-9);
    expectWithin(studentT(0.995, Math.floor(combined.degrees)), t99, 0.005);
  });

  it('NIST e-Handbook 1.3.5.2, ZARR13: the 95 % interval of 195 readings (memory; recomputed)', () => {
    const { n, mean: middle, sd, t, recomputed } = gum.zarr13;
    const half = (studentT(0.975, n - 1) * sd) / Math.sqrt(n);
    expectWithin(studentT(0.975, n - 1), t, 5e-5);
    expectWithin(middle - half, recomputed[0], 1e-9);
    expectWithin(middle + half, recomputed[1], 1e-9);
  });
});

describe("Student's t, two-sided, as in JCGM 100 Table G.2", () => {
  it('agrees with the computed table to 1e-6 (computed with SciPy)', () => {
    const rows = [...Object.entries(table.two_sided), ['Infinity', table.infinity] as const];
    expect(rows.length).toBeGreaterThan(40);
    for (const [degrees, row] of rows) {
      for (const [percent, t] of Object.entries(row)) {
        expectWithin(studentT(0.5 + Number(percent) / 200, Number(degrees)), t, 1e-6);
      }
    }
  });

  it.each([
    [1, [1.84, 6.31, 12.71, 13.97, 63.66]],
    [10, [1.05, 1.81, 2.23, 2.28, 3.17]],
  ])('ν = %d: rounds to the printed row (memory)', (degrees, printed) => {
    const percents = [68.27, 90, 95, 95.45, 99];
    const rounded = percents.map((percent) => Number(studentT(0.5 + percent / 200, degrees).toFixed(2)));
    expect(rounded).toEqual(printed);
  });
});
