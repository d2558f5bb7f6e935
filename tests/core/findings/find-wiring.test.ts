import { describe, expect, it } from 'vitest';
import { findInverted, findSwapped } from '../../../core/findings/find-wiring.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { PromptedWays } from '../../../core/findings/prompted-ways.ts';
import { makeSubject } from './make-subject.ts';

function find(which: typeof findSwapped, wish: Partial<PromptedWays>) {
  const prompted: PromptedWays = {
    prompts: 24,
    astray: 1,
    wiring: 'swapped',
    agreement: 0.9,
    turn: 0,
    turnU95: 1,
    ...wish,
  };
  return which(makeSubject({ subject: { prompted } }), defaultLimits)!;
}

describe('findSwapped and findInverted', () => {
  it('decide by 30 % of the prompts, with the uncertainty of a share of so many', () => {
    // 1.96 · √(0.25/24) = 0.20004.
    const found = find(findSwapped, { astray: 0.51 });
    expect(found).toMatchObject({ value: 0.51, limit: 0.3, decision: 'fail', severity: 'fault' });
    expect(found.u95).toBeCloseTo(0.20004, 5);
    expect(find(findSwapped, { prompts: 96 }).u95).toBeCloseTo(0.10002, 5);
    expect([0.49, 0.11, 0.09].map((astray) => find(findSwapped, { astray }).decision)).toEqual([
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });

  it('cannot say where the wiring explains too little of where the stick went', () => {
    const at = (agreement: number) => find(findSwapped, { agreement }).decision;
    expect([at(0.8), at(0.79)]).toEqual(['fail', 'cannot say']);
    const nothing = { wiring: 'as it should be', astray: 0.6, agreement: 0.79 } as const;
    expect([find(findSwapped, nothing).decision, find(findInverted, nothing).decision]).toEqual([
      'cannot say',
      'cannot say',
    ]);
  });

  it('each pass the wiring that is the other one’s', () => {
    const values = (wiring: PromptedWays['wiring']) =>
      [findSwapped, findInverted].map((which) => find(which, { wiring }).value);
    expect(values('as it should be')).toEqual([0, 0]);
    expect(values('swapped')).toEqual([1, 0]);
    expect(values('swapped, y inverted')).toEqual([1, 0]);
    expect(values('x inverted')).toEqual([0, 1]);
    expect(values('both inverted')).toEqual([0, 1]);
    expect(find(findInverted, {}).decision).toBe('pass');
  });

  it('say which axes run backwards', () => {
    const says = (which: typeof findSwapped, wiring: PromptedWays['wiring']) => find(which, { wiring }).says;
    expect(says(findSwapped, 'swapped')).toMatch(/its axes are swapped\.$/);
    expect(says(findSwapped, 'swapped, x inverted')).toMatch(/swapped, and one or both run backwards\.$/);
    expect(says(findInverted, 'y inverted')).toMatch(/its y axis runs backwards\.$/);
    expect(says(findInverted, 'both inverted')).toMatch(/both axes run backwards\.$/);
    expect(find(findSwapped, { astray: 0.75 }).for).toEqual([
      '75 % of 24 prompts came out elsewhere, swapped, agreement 0.90.',
    ]);
  });
});
