import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/zones/chain.ts';
import { hidesDisc } from '../../../core/zones/hides-disc.ts';
import { onsetAlong } from '../../../core/zones/onset.ts';
import { outputOf } from '../../../core/zones/output.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';
import { silentRadius } from '../../../core/zones/silent-radius.ts';

const edge = fc.double({ min: 0.01, max: 0.6, noNaN: true });
const zone: fc.Arbitrary<Stage> = fc.oneof(
  edge.map((inner) => ({ zone: 'axial', inner }) as const),
  edge.map((inner) => ({ zone: 'radial', inner }) as const),
  edge.map((inner) => ({ zone: 'scaledRadial', inner, outer: 0.95 }) as const),
  edge.map((inner) => ({ zone: 'slopedAxial', inner, slope: 0.4 }) as const),
  fc
    .tuple(fc.array(edge, { minLength: 1, maxLength: 9 }), fc.boolean())
    .map(
      ([inners, blend]) => ({ zone: 'sector', blend, sectors: inners.map((inner) => ({ inner, outer: 1 })) }) as const,
    ),
);
const later: fc.Arbitrary<Stage> = fc.constantFrom<Stage[]>(
  { curve: { exponent: 2 } },
  { minimumOutput: 0.1 },
  { quantise: { bits: 6, levels: 'signed' } },
  { quantise: { bits: 6, levels: 'even' } },
  { zone: 'radial', inner: 0.3 },
);
const chains = fc.tuple(fc.boolean(), zone, fc.array(later, { maxLength: 2 })).map(([off, first, rest]): Stage[] => [
  // A stage that is switched off says nothing of what comes out.
  ...(off ? [{ zone: 'radial', inner: 0.9, off: true } as const] : []),
  first,
  ...rest,
]);
const place = fc.record({
  x: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  y: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
});

describe('silentRadius', () => {
  it('is the inner edge of the first zone, and nothing is known of a chain that makes something of nothing', () => {
    const known = (stages: readonly Stage[]): number => silentRadius(compileChain({ stages }), stages);
    expect(known([{ zone: 'radial', inner: 0.2 }])).toBeCloseTo(0.2, 8);
    expect(known([{ zone: 'radial', inner: 0.2 }, { quantise: { bits: 4, levels: 'even' } }])).toBe(-1);
    expect(known([{ curve: { exponent: 2 } }, { zone: 'radial', inner: 0.2 }])).toBeLessThan(0);
    expect(known([])).toBe(-1);
  });

  it('holds nothing that comes out', () => {
    fc.assert(
      fc.property(chains, fc.double({ min: 0, max: 360, noNaN: true }), (stages, degrees) => {
        const run = compileChain({ stages });
        const radius = silentRadius(run, stages);
        const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
        for (const share of [0, 0.5, 1])
          if (radius > 0) expect(outputOf(run, share * radius * x, share * radius * y, new Float64Array(2))).toBe(0);
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  it('changes no onset and no answer about a disc', () => {
    fc.assert(
      fc.property(chains, place, fc.integer({ min: 0, max: 71 }), edge, (stages, rest, step, radius) => {
        const run = compileChain({ stages });
        const silent = silentRadius(run, stages);
        const [skipping, scanning] = [silent, -1].map((within) => onsetAlong(run, rest, 5 * step, 1, within));
        if (scanning === null || scanning === undefined) expect(skipping).toBeNull();
        else expect(skipping).toBeCloseTo(scanning, 9);
        const asked = hidesDisc(run, stages, radius);
        const out = new Float64Array(2);
        const seen = Array.from({ length: 360 }, (_, degrees) =>
          outputOf(
            run,
            radius * (1 - 1e-12) * Math.cos((degrees * Math.PI) / 180),
            radius * (1 - 1e-12) * Math.sin((degrees * Math.PI) / 180),
            out,
          ),
        );
        if (asked) expect(Math.max(...seen)).toBe(0);
        else expect(radius).toBeGreaterThan(silent);
      }),
      { seed: 43, numRuns: 500 },
    );
  });
});
