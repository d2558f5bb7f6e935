import { describe, expect, it } from 'vitest';
import { demands, type Part } from './demands.ts';
import type { Judged } from './judge-draw.ts';

const wish: Judged['wish'] = { seed: 1, pad: 'sensor12', gate: null, faults: [], slip: null };
const sound: Pick<Judged, 'wish' | 'verdict' | 'failed' | 'notSo' | 'cannotSay' | 'lacks'> = {
  wish,
  verdict: 'keep',
  failed: [],
  notSo: [],
  cannotSay: [],
  lacks: [],
};

/** What each demand of the part makes of a draw, by what it counts. */
function told(part: Part, change: Partial<Judged>): Record<string, boolean> {
  const judged = { ...sound, ...change } as Judged;
  return Object.fromEntries(demands[part].map(({ demand, holds }) => [demand.what, holds(judged)]));
}

describe('a sound stick', () => {
  it('is kept, or left open without being called faulty', () => {
    expect(told('sound', {})).toEqual({ 'called faulty': false, kept: true });
    expect(told('sound', { verdict: 'undecided' })).toEqual({ 'called faulty': false, kept: false });
  });

  it('is called faulty by a verdict to act, and by a failed finding that is not so', () => {
    for (const verdict of ['recalibrate', 'reseat', 'replace'])
      expect(told('sound', { verdict })['called faulty'], verdict).toBe(true);
    expect(told('sound', { failed: ['skewed-part'], notSo: ['skewed-part'] })).toEqual({
      'called faulty': true,
      kept: true,
    });
    expect(told('sound', { failed: ['late-reports'] })['called faulty']).toBe(false);
  });
});

describe('a fault', () => {
  const skewed = { wish: { ...wish, faults: [{ name: 'skew', size: 12 }] } } as const;

  it('is named by what is right about it, first or second', () => {
    const named = (failed: string[]): boolean | undefined =>
      told('far', { ...skewed, failed })['named first or second'];
    expect(named(['skewed-part'])).toBe(true);
    expect(named(['turned-part', 'axes-together'])).toBe(true);
    expect(named(['turned-part', 'short-range', 'skewed-part'])).toBe(false);
    expect(named([])).toBe(false);
  });

  it('must not be kept, if it is one of the stick', () => {
    const asked = (name: 'skew' | 'trigger-dead'): boolean[] =>
      demands.far.map(({ isAskedOf }) => isAskedOf({ wish: { ...wish, faults: [{ name, size: 1 }] } }));
    expect([asked('skew'), asked('trigger-dead')]).toEqual([
      [true, true],
      [true, false],
    ]);
    expect(['keep', 'undecided', 'replace'].map((verdict) => told('far', { ...skewed, verdict })['not kept'])).toEqual([
      false,
      true,
      true,
    ]);
  });

  it('of two is named anywhere, and both must be', () => {
    const both = {
      wish: {
        ...wish,
        faults: [
          { name: 'skew', size: 12 },
          { name: 'overshoot', size: 15 },
        ],
      },
    } as const;
    expect(
      told('pair', { ...both, failed: ['short-range', 'turned-part', 'overshoot', 'skewed-part'] })['both named'],
    ).toBe(true);
    expect(told('pair', { ...both, failed: ['skewed-part'] })['both named']).toBe(false);
  });
});

describe('a slip', () => {
  const slip = { wish: { ...wish, slip: 'one-way-turns' } } as const;

  it('is told by a finding that is left open or failed, or by what the log lacks', () => {
    const isTold = (change: Partial<Judged>): boolean | undefined =>
      told('slip', { ...slip, ...change })['told what was wrong'];
    expect(isTold({ cannotSay: ['rim-not-covered'] })).toBe(true);
    expect(isTold({ lacks: ['turns-one-way'] })).toBe(true);
    expect(isTold({ cannotSay: ['turned-part'], failed: ['odd-release'] })).toBe(false);
  });

  it('is counted where it led to reseat or replace', () => {
    expect(told('slip', { ...slip, verdict: 'replace' })['reseated or replaced']).toBe(true);
    expect(told('slip', { ...slip, verdict: 'recalibrate' })['reseated or replaced']).toBe(false);
  });
});
