import { describe, expect, it } from 'vitest';
import { curveMisses, sizesOf, type Curve } from './curves.ts';

const curve: Curve = { name: 'skew', pad: 'sensor12', points: [], halfSeen: 6, wanted: null };

describe('a half-visible size', () => {
  it('misses where it is clearly larger than the wanted one: the interval there stays below one half', () => {
    const at = (found: number): number => curveMisses({ ...curve, wanted: { size: 5, found, of: 120 } }).length;
    expect([49, 48].map((found) => at(found))).toEqual([0, 1]);
    const [miss] = curveMisses({ ...curve, wanted: { size: 5, found: 20, of: 120 } });
    expect(miss?.where).toBe('sensor12 curve skew');
    expect(miss?.says).toContain('It is half visible at 6.00 °; 5 was asked for: 20 of 120');
  });

  it('misses where there is none', () => {
    expect(curveMisses({ ...curve, halfSeen: null }).map(({ says }) => says)).toEqual([
      'Its curve does not cross one half.',
    ]);
    expect(curveMisses(curve)).toEqual([]);
  });

  it('is kept by kind of pad', () => {
    expect(sizesOf([curve, { ...curve, name: 'noise', halfSeen: null }, { ...curve, pad: 'reported8' }])).toEqual({
      sensor12: { skew: 6, noise: null },
      reported8: { skew: 6 },
    });
  });
});
