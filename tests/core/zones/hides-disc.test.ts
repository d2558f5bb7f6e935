import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/zones/chain.ts';
import { hidesDisc } from '../../../core/zones/hides-disc.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';

function hides(stages: readonly Stage[], radius: number): boolean {
  return hidesDisc(compileChain({ stages }), stages, radius);
}

describe('hidesDisc', () => {
  it('takes the edge of a radial and of an axial zone as inside', () => {
    for (const shape of ['radial', 'scaledRadial', 'axial'] as const) {
      const stages: Stage[] = [{ zone: shape, inner: 0.0723 }];
      expect(hides(stages, 0.0723)).toBe(true);
      expect(hides(stages, 0.0723001)).toBe(false);
    }
  });

  it('is decided by the smallest sector, stepped or blended', () => {
    const sectors = Array.from({ length: 7 }, (_, index) => ({ inner: index === 3 ? 0.05 : 0.2, outer: 1 }));
    for (const blend of [false, true]) {
      const stages: Stage[] = [{ zone: 'sector', blend, sectors }];
      expect(hides(stages, 0.05)).toBe(true);
      expect(hides(stages, 0.0501)).toBe(false);
    }
    const narrow = Array.from({ length: 360 }, (_, index) => ({ inner: index === 217 ? 0.01 : 0.2, outer: 1 }));
    expect(hides([{ zone: 'sector', blend: false, sectors: narrow }], 0.1)).toBe(false);
  });

  it('looks inside the disc, not only along its border', () => {
    const points = [
      [0, 0],
      [0.1, 0.2],
      [0.2, 0],
      [1, 0],
    ] as const;
    expect(hides([{ curve: { points } }], 0.3)).toBe(false);
  });

  it('without a stage hides nothing but the point 0', () => {
    expect(hides([], 0)).toBe(true);
    expect(hides([], 1e-6)).toBe(false);
  });
});
