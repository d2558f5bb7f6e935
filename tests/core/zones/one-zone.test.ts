import { describe, expect, it } from 'vitest';
import { chainOf, zoneName, zoneOf } from '../../../core/zones/one-zone.ts';
import { parseChain } from '../../../core/zones/parse-chain.ts';

describe('one plain zone', () => {
  it('is a chain of one stage that the chain reader takes', () => {
    for (const shape of ['axial', 'radial', 'scaledRadial'] as const)
      expect(parseChain(structuredClone(chainOf({ shape, inner: 0.1, outer: 0.9 })))).toMatchObject({ ok: true });
  });

  it('carries an outer edge only where it rescales', () => {
    expect(chainOf({ shape: 'radial', inner: 0.1, outer: 0.9 }).stages).toEqual([{ zone: 'radial', inner: 0.1 }]);
    expect(chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 0.9 }).stages).toEqual([
      { zone: 'scaledRadial', inner: 0.1, outer: 0.9 },
    ]);
  });

  it('has a name that states it', () => {
    expect(zoneName({ shape: 'radial', inner: 0.08, outer: 1 })).toBe('radial 8 %, cut');
    expect(zoneName({ shape: 'scaledRadial', inner: 0.075, outer: 0.95 })).toBe('scaled radial 7.5 to 95 %');
  });

  it('is read back from its chain; a cut says nothing of an outer edge', () => {
    expect(zoneOf(chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 0.9 }))).toEqual({ shape: 'scaledRadial', inner: 0.1, outer: 0.9 }); // prettier-ignore
    expect(zoneOf(chainOf({ shape: 'axial', inner: 0.1, outer: 0.9 }))).toEqual({ shape: 'axial', inner: 0.1, outer: 1 }); // prettier-ignore
  });

  it.each([
    ['switched off', [{ zone: 'radial', inner: 0.1, off: true }]],
    ['rescaled on each axis', [{ zone: 'axial', inner: 0.1, outer: 1, rescale: true }]],
    ['another kind', [{ zone: 'slopedAxial', inner: 0.1, slope: 0.2 }]],
    ['nothing', []],
    ['one of two', [{ zone: 'radial', inner: 0.1 }, { minimumOutput: 0.1 }]],
  ] as const)('is none where the chain is %s', (_, stages) => {
    expect(zoneOf({ ...chainOf({ shape: 'radial', inner: 0.1, outer: 1 }), stages })).toBeNull();
  });
});
