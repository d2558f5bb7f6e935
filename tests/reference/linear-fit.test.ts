import { describe, expect, it } from 'vitest';
import { linearFit } from '../../core/numeric/linear-fit.ts';
import { variance } from '../../core/numeric/variance.ts';
import { expectRelative } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

const norris = readGolden('nist_strd_norris') as { x: number[]; y: number[]; certified: Record<string, string> };

function certified(name: string): number {
  return Number(norris.certified[name]);
}

describe('NIST StRD Norris, calibration of an ozone monitor', () => {
  const fit = linearFit(norris.x, norris.y)!;

  it('gives the certified line and its standard errors to 1e-10 (seen)', () => {
    expectRelative(fit.slope, certified('slope'), 1e-10);
    expectRelative(fit.intercept, certified('intercept'), 1e-10);
    expectRelative(fit.slopeError!, certified('seSlope'), 1e-10);
    expectRelative(fit.interceptError!, certified('seIntercept'), 1e-10);
  });

  it('gives the residual standard deviation to 1e-10 (memory; confirmed by exact arithmetic)', () => {
    expect(fit.degrees).toBe(34);
    expectRelative(fit.residualDeviation!, certified('residualSd'), 1e-10);
  });

  it('explains what the analysis of variance says: residual squares, R² (seen) and F (memory) to 1e-9', () => {
    const residual = fit.degrees * fit.residualDeviation! ** 2;
    const regression = fit.slope ** 2 * variance(norris.x) * (norris.x.length - 1);
    expectRelative(residual, certified('residualSS'), 1e-9);
    expectRelative(regression, certified('regressionSS'), 1e-9);
    expectRelative(regression / (regression + residual), certified('rSquared'), 1e-12);
    expectRelative((fit.slope / fit.slopeError!) ** 2, certified('F'), 1e-9);
  });
});
