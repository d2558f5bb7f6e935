import { describe, expect, it } from 'vitest';
import { effectiveSteps } from '../../../core/measure/effective-step.ts';
import { makeEvidence } from '../../support/make-evidence.ts';

function stepsOf(readings: readonly number[]) {
  return effectiveSteps(makeEvidence({ dwells: [{ point: { x: 2000, y: 2000 }, readings }] }));
}

describe('effectiveSteps', () => {
  it('is 1 as soon as two counts are neighbours', () => {
    expect(stepsOf([2000, 2000, 2001, 2016, 2016, 2031])).toEqual({ x: 1, y: 1 });
  });

  it('tells a comb where enough distinct counts lie on it', () => {
    const comb = Array.from({ length: 6 }, (_, i) => [2000 + 16 * i, 1000 + 2 * i]).flat();
    expect(stepsOf(comb)).toEqual({ x: 16, y: 1 });
    const longer = Array.from({ length: 12 }, (_, i) => [2000 + 16 * i, 1000 + 2 * i]).flat();
    expect(stepsOf(longer)).toEqual({ x: 16, y: 2 });
  });

  it('takes no few spots for a comb, however far apart they are', () => {
    expect(stepsOf([2000, 2000, 2100, 2400])).toEqual({ x: 1, y: 1 });
    expect(stepsOf([2000, 2000])).toEqual({ x: 1, y: 1 });
  });

  it('sees the comb in the gate trace when the rest alone shows too little of it', () => {
    const evidence = makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 }, readings: [2048, 2048] }], turns: [] });
    const trace = Array.from({ length: 40 }, (_, i) => [16 * i, 5 * i + 1]).flat();
    expect(effectiveSteps({ ...evidence, rim: { ...evidence.rim!, trace } })).toEqual({ x: 16, y: 1 });
    const off = Array.from({ length: 40 }, (_, i) => [16 * i, 5 * i]).flat();
    expect(effectiveSteps({ ...evidence, rest: null, rim: { ...evidence.rim!, trace: off } })).toEqual({ x: 16, y: 5 });
  });
});
