import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/zones/chain.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';
import { runStages } from '../../support/run-stages.ts';

const part = fc.double({ min: -1, max: 1, noNaN: true });
const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const edges = fc
  .tuple(fc.double({ min: 0, max: 0.9, noNaN: true }), fc.double({ min: 0.05, max: 0.6, noNaN: true }))
  .map(([inner, width]) => ({ inner, outer: inner + width }));

const scaled: fc.Arbitrary<Stage> = edges.map((edge) => ({ zone: 'scaledRadial', ...edge }));
const axial: fc.Arbitrary<Stage> = edges.map((edge) => ({ zone: 'axial', ...edge, rescale: true }));
const plain: fc.Arbitrary<Stage> = edges.map(({ inner }) => ({ zone: 'radial', inner }));
const plainAxial: fc.Arbitrary<Stage> = edges.map(({ inner }) => ({ zone: 'axial', inner }));
const sloped: fc.Arbitrary<Stage> = edges.map(({ inner, outer }) => ({ zone: 'slopedAxial', inner, slope: outer / 4 }));
/** An even number of sectors with opposite ones alike, so that the zone itself has the symmetry asked for. */
const sector: fc.Arbitrary<Stage> = fc
  .tuple(fc.boolean(), fc.array(edges, { minLength: 1, maxLength: 6 }))
  .map(([blend, half]) => ({ zone: 'sector', blend, sectors: [...half, ...half] }));
const anyZone = fc.oneof(scaled, axial, plain, plainAxial, sloped, sector);

describe('compileChain', () => {
  it('without stages gives what it was given', () => {
    expect(runStages([], 0.3, -1.2)).toEqual({ x: 0.3, y: -1.2 });
  });

  it('runs the stages in their order and leaves out those that are off', () => {
    const lift: Stage = { minimumOutput: 0.2 };
    const zone: Stage = { zone: 'radial', inner: 0.25 };
    expect(runStages([zone, lift], 0.2, 0).x).toBe(0);
    expect(runStages([lift, zone], 0.2, 0).x).toBeCloseTo(0.36, 12);
    expect(runStages([lift, { ...zone, off: true }], 0.01, 0).x).toBeCloseTo(0.208, 12);
  });

  it('can run again and again on the same slot', () => {
    const run = compileChain({ stages: [{ zone: 'scaledRadial', inner: 0.2, outer: 1 }] });
    const out = new Float64Array([9, 9]);
    run(0.6, 0, out);
    expect(out[0]).toBeCloseTo(0.5, 12);
    run(0.1, 0.1, out);
    expect([...out]).toEqual([0, 0]);
  });
});

describe('a zone', () => {
  it('is odd-symmetric', () => {
    fc.assert(
      fc.property(anyZone, part, part, (zone, x, y) => {
        const out = runStages([zone], x, y);
        const back = runStages([zone], -x, -y);
        // A direction within rounding of a sector's border may fall to either side.
        if (zone.off === undefined && 'zone' in zone && zone.zone === 'sector' && !zone.blend) {
          const place = (Math.atan2(y, x) / (2 * Math.PI)) * zone.sectors.length + 0.5;
          fc.pre(Math.abs(place - Math.round(place)) > 1e-9);
        }
        expect(back.x).toBeCloseTo(-out.x, 9);
        expect(back.y).toBeCloseTo(-out.y, 9);
      }),
      { seed: 21 },
    );
  });

  it('never gives more than the disc or the square that it is fed with', () => {
    fc.assert(
      fc.property(anyZone, part, part, (zone, x, y) => {
        const out = runStages([zone], x, y);
        expect(Math.abs(out.x)).toBeLessThanOrEqual(1 + 1e-12);
        expect(Math.abs(out.y)).toBeLessThanOrEqual(1 + 1e-12);
      }),
      { seed: 22 },
    );
  });

  it('gives nothing at rest and never turns a push against its own side', () => {
    fc.assert(
      fc.property(anyZone, part, part, (zone, x, y) => {
        expect(runStages([zone], 0, 0)).toEqual({ x: 0, y: 0 });
        const out = runStages([zone], x, y);
        expect(out.x * x).toBeGreaterThanOrEqual(0);
        expect(out.y * y).toBeGreaterThanOrEqual(0);
      }),
      { seed: 23 },
    );
  });

  it('never falls along a ray', () => {
    // The sloped zone may: further out on a diagonal its edge grows with the other axis.
    const monotone = fc.oneof(scaled, axial, plain, plainAxial, sector);
    fc.assert(
      fc.property(monotone, angle, (zone, turn) => {
        let before = 0;
        for (let step = 0; step <= 60; step += 1) {
          const m = step / 50;
          const out = runStages([zone], m * Math.cos(turn), m * Math.sin(turn));
          const now = Math.hypot(out.x, out.y);
          expect(now).toBeGreaterThanOrEqual(before - 1e-9);
          before = now;
        }
      }),
      { seed: 24, numRuns: 60 },
    );
  });

  it('turns with the stick where it is radial', () => {
    fc.assert(
      fc.property(fc.oneof(scaled, plain), part, part, angle, (zone, x, y, turn) => {
        const m = Math.hypot(x, y);
        fc.pre('inner' in zone && Math.abs(m - zone.inner) > 1e-9);
        const cos = Math.cos(turn);
        const sin = Math.sin(turn);
        const out = runStages([zone], x, y);
        const turned = runStages([zone], x * cos - y * sin, x * sin + y * cos);
        expect(turned.x).toBeCloseTo(out.x * cos - out.y * sin, 9);
        expect(turned.y).toBeCloseTo(out.x * sin + out.y * cos, 9);
      }),
      { seed: 25 },
    );
  });

  it('is continuous at its inner edge only where it is rescaled', () => {
    fc.assert(
      fc.property(edges, angle, ({ inner, outer }, turn) => {
        fc.pre(inner > 0.01);
        const just = inner * (1 + 1e-9);
        const at = [just * Math.cos(turn), just * Math.sin(turn)] as const;
        const soft = runStages([{ zone: 'scaledRadial', inner, outer }], ...at);
        const hard = runStages([{ zone: 'radial', inner }], ...at);
        expect(Math.hypot(soft.x, soft.y)).toBeLessThan(1e-6);
        expect(Math.hypot(hard.x, hard.y)).toBeCloseTo(inner, 6);
      }),
      { seed: 26 },
    );
  });

  it('counts its inner edge as inside', () => {
    expect(runStages([{ zone: 'radial', inner: 0.25 }], 0.25, 0).x).toBe(0);
    expect(runStages([{ zone: 'axial', inner: 0.25 }], -0.25, 0.3)).toEqual({ x: 0, y: 0.3 });
    expect(runStages([{ zone: 'slopedAxial', inner: 0.25, slope: 0.5 }], 0.5, 0.5)).toEqual({ x: 0, y: 0 });
  });
});
