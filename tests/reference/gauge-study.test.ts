import { describe, expect, it } from 'vitest';
import { studyGauge, type GaugeStudy } from '../../core/numeric/gauge-study.ts';
import { expectRelative, expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

interface Crossed {
  readonly id: string;
  readonly data_operator_part_trial: number[][][];
  readonly expected: Record<string, number>;
}

interface Handbook {
  readonly id: string;
  readonly data_operator_part_trial: number[][][];
  readonly expected: {
    anovaPooled: { EV: number; AV: number; GRR: number; PV: number; TV: number; pctGRR: number; ndc: number };
  };
}

const { cases } = readGolden('grr') as { cases: [Crossed, Handbook] };
const [seen, handbook] = cases;

function study(readings: number[][][]): GaugeStudy {
  return studyGauge(readings)!;
}

describe('gauge repeatability and reproducibility', () => {
  it('jaspQualityControl tests: sums of squares, interaction and variances of a crossed study to 1e-9 (seen)', () => {
    const { squares, variances, interactionP, isPooled } = study(seen.data_operator_part_trial);
    const { expected } = seen;
    expectRelative(squares.parts, expected['ssParts']!, 1e-9);
    expectRelative(squares.operators, expected['ssOperators']!, 1e-9);
    expectRelative(squares.interaction, expected['ssInteraction']!, 1e-9);
    expectRelative(squares.repeatability, expected['ssRepeatability']!, 1e-9);
    expectRelative(squares.total, expected['ssTotal']!, 1e-9);
    expectRelative(interactionP!, expected['interactionP']!, 1e-9);
    expect(isPooled).toBe(true);
    expectRelative(variances.repeatability, expected['varRepeatability']!, 1e-9);
    expectRelative(variances.reproducibility!, expected['varReproducibility']!, 1e-9);
    expectRelative(variances.gauge, expected['varGRR']!, 1e-9);
    expectRelative(variances.part!, expected['varPart']!, 1e-9);
    expectRelative(variances.total, expected['varTotal']!, 1e-9);
    expectWithin(100 * Math.sqrt(variances.gauge / variances.total), expected['pctStudyVarGRR']!, 0.005);
  });

  it('AIAG Measurement Systems Analysis: 10 parts, 3 appraisers, 3 trials to 2e-4 (data and results from memory)', () => {
    const { variances, isPooled } = study(handbook.data_operator_part_trial);
    const { EV, AV, GRR, PV, TV, pctGRR, ndc } = handbook.expected.anovaPooled;
    expect(isPooled).toBe(true);
    expectWithin(Math.sqrt(variances.repeatability), EV, 2e-4);
    expectWithin(Math.sqrt(variances.reproducibility!), AV, 2e-4);
    expectWithin(Math.sqrt(variances.gauge), GRR, 2e-4);
    expectWithin(Math.sqrt(variances.part!), PV, 2e-4);
    expectWithin(Math.sqrt(variances.total), TV, 2e-4);
    expectWithin(100 * Math.sqrt(variances.gauge / variances.total), pctGRR, 0.005);
    // Distinct categories: 1.41 part deviations to one of the gauge, whole ones.
    expect(Math.floor(1.41 * Math.sqrt(variances.part! / variances.gauge))).toBe(ndc);
  });
});
