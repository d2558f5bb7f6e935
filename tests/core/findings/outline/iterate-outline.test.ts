/** Gates with sides, found through `fitOutline` with their corners and how far those are rounded. */
import { describe, expect, it } from 'vitest';
import { fitOutline } from '../../../../core/findings/outline/fit-outline.ts';
import type { RimPoint } from '../../../../core/findings/outline/outline-model.ts';
import { WAVE_SIGMA } from '../../../../core/findings/outline/gate-prior.ts';
import { leastPenalty } from '../../../../core/findings/outline/iterate-outline.ts';
import { ROUND } from '../../../../core/findings/outline/outline-model.ts';
import { createRandom } from '../../../../core/numeric/random.ts';

/** Distance to a regular polygon whose corners of radius 1 are rounded by ρ, by walking out until it is left. */
function walkOut(sides: number, rho: number, turn: number): number {
  const half = Math.PI / sides;
  const isInside = (radius: number): boolean => {
    // Distance to the small polygon that the rounding stands about; a corner of it lies at 1 − ρ.
    const psi = Math.abs(turn - 2 * half * Math.round(turn / (2 * half)));
    const [x, y] = [radius * Math.cos(half - psi), radius * Math.sin(half - psi)];
    const [apothem, edge] = [(1 - rho) * Math.cos(half), (1 - rho) * Math.sin(half)];
    return y <= edge ? x <= apothem + rho : Math.hypot(x - apothem, y - edge) <= rho;
  };
  let [low, high] = [0.1, 1.5];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (isInside(middle)) low = middle;
    else high = middle;
  }
  return low;
}

interface Gate {
  readonly sides: number;
  readonly rho: number;
  readonly corner: number;
  readonly noise?: number;
  readonly x?: number;
  readonly y?: number;
}

function rimOf({ sides, rho, corner, noise = 0, x = 1200, y = 1100 }: Gate): RimPoint[] {
  const random = createRandom(7);
  return Array.from({ length: 72 }, (_, i) => {
    const turn = (i * Math.PI) / 36;
    const radius = walkOut(sides, rho, turn - (corner * Math.PI) / 180) * (1 + noise * random.normal());
    return { angle: 5 * i, dx: x * radius * Math.cos(turn), dy: y * radius * Math.sin(turn) };
  });
}

/** Degrees from the corner that is nearest to one, −half … half of the way to the next. */
function cornerOff(found: number, corner: number, sides: number): number {
  const way = 360 / sides;
  const off = (found * 180) / Math.PI - corner;
  return off - way * Math.round(off / way);
}

const gates: readonly Gate[] = [
  { sides: 4, rho: 0.35, corner: 45 },
  { sides: 4, rho: 0.6, corner: 40 },
  { sides: 6, rho: 0.3, corner: 30 },
  { sides: 6, rho: 0.2, corner: 7 },
  { sides: 8, rho: 0.2, corner: 0 },
  { sides: 8, rho: 0.4, corner: 22.5 },
  { sides: 8, rho: 0.1, corner: 4 },
];

describe('a gate with sides', () => {
  it.each(gates)('is found with its corners and its rounding: %o', (gate) => {
    const fit = fitOutline(rimOf(gate))!;
    expect(fit.sides).toBe(gate.sides);
    expect(cornerOff(fit.value.corner, gate.corner, gate.sides)).toBeCloseTo(0, 2);
    expect(fit.value.rounding).toBeCloseTo(gate.rho, 3);
    for (const [name, span] of [
      ['xPlus', 1200],
      ['xMinus', 1200],
      ['yPlus', 1100],
      ['yMinus', 1100],
    ] as const)
      expect(fit.value[name] / span).toBeCloseTo(1, 3);
    expect(fit.residual).toBeLessThan(1e-4);
  });

  it.each(gates)('is found under noise of 0.2 %%, within what is said of it: %o', (gate) => {
    const fit = fitOutline(rimOf({ ...gate, noise: 0.002 }))!;
    expect(fit.sides).toBe(gate.sides);
    const sigma = (Math.sqrt(fit.variance({ corner: 1 })) * 180) / Math.PI;
    expect(sigma).toBeLessThan(1.5);
    expect(Math.abs(cornerOff(fit.value.corner, gate.corner, gate.sides))).toBeLessThan(3 * sigma);
    const known = Math.sqrt(fit.variance({ rounding: 1 }));
    expect(Math.abs(fit.value.rounding - gate.rho)).toBeLessThan(3 * known);
  });

  it('is a round one where noise is all that there is, and a round one has no corner', () => {
    const fit = fitOutline(rimOf({ sides: 8, rho: 0.98, corner: 0, noise: 0.002 }))!;
    expect(fit).toMatchObject({ sides: 0, value: { corner: 0, rounding: 0 } });
    expect(fit.variance({ corner: 1 })).toBe(0);
  });
});

describe('least squares of a round gate', () => {
  const start = (): Float64Array => {
    const p = new Float64Array(ROUND);
    p.set([1200, 1200, 1100, 1100]);
    return p;
  };
  /** An oval of 1 % and a threefold wave of 0.4 %. */
  const wavy: RimPoint[] = Array.from({ length: 72 }, (_, i) => {
    const turn = (i * Math.PI) / 36;
    const radius = 1 + 0.004 * Math.cos(3 * turn);
    return { angle: 5 * i, dx: 1212 * radius * Math.cos(turn), dy: 1100 * radius * Math.sin(turn) };
  });

  it('shares a wave among the gate and what it could be else, and counts what the waves are beyond a usual gate', () => {
    const fit = leastPenalty(wavy, 0, start())!;
    expect(fit.points).toBe(72);
    expect(fit.residual).toBeLessThan(1e-4);
    const waves = [...fit.p.subarray(8, ROUND)];
    expect(fit.unusual).toBeCloseTo(
      waves.reduce((sum, wave) => sum + (wave / WAVE_SIGMA) ** 2, (fit.p[7]! / 0.1) ** 2),
      9,
    );
    // The oval costs nothing: the spans take it up.
    expect((fit.p[0]! + fit.p[1]!) / (fit.p[2]! + fit.p[3]!)).toBeCloseTo(1212 / 1100, 3);
  });

  it('has no answer for points that all stand in one place, or for spans that cannot be', () => {
    const one = wavy.map((point) => ({ ...point, dx: 1200, dy: 0 }));
    expect(leastPenalty(one, 0, start())).toBeNull();
    const none = wavy.map((point) => ({ ...point, dx: Number.NaN }));
    expect(leastPenalty(none, 0, start())).toBeNull();
  });
});
