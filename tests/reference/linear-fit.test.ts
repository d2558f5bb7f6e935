import { describe, expect, it } from 'vitest';
import { linearFit } from '../../core/numeric/linear-fit.ts';
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
});
