import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Turn } from '../../../core/capture/evidence/evidence.ts';
import { axesTogether } from '../../../core/findings/axes-together.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeTurn } from '../../support/make-evidence.ts';

const about = { x: 2048, y: 2048 };
const turn = (change: (point: Pair, degrees: number) => Pair | null): Turn => {
  const round = makeTurn({ way: 'clockwise', radius: () => 1000 }, about, sensorFields);
  return { ...round, points: round.points.map((point, i) => (point === null ? null : change(point, 5 * i))) };
};
const mixed = (k: number, of = 1) => turn(({ x, y }) => ({ x: x + k * y, y: of * (y + k * x) }));

describe('the share of each axis on the other', () => {
  it('is k of a round gate that comes out as x + k·y and y + k·x, whatever the scale and the middle', () => {
    for (const k of [-0.4, -0.08, 0, 0.1, 0.7]) {
      expect(axesTogether([mixed(k)])).toBeCloseTo(k, 9);
      expect(axesTogether([mixed(k, 1.3), mixed(k, 1.3)])).toBeCloseTo(k, 9);
      const shifted = turn(({ x, y }) => ({ x: 300 + x + k * y, y: y + k * x - 100 }));
      expect(axesTogether([shifted])).toBeCloseTo(k, 9);
    }
  });

  it('is 1 where both are the same, and null where an axis does not move', () => {
    expect(axesTogether([turn(({ x }) => ({ x, y: x }))])).toBeCloseTo(1, 9);
    expect(axesTogether([turn(({ x }) => ({ x, y: -x }))])).toBeCloseTo(-1, 9);
    expect(axesTogether([turn(({ x }) => ({ x, y: 0 }))])).toBeNull();
  });

  it('is null with fewer than 24 points along the gate', () => {
    const first = (count: number) => turn((point, degrees) => (degrees < 5 * count ? point : null));
    expect(axesTogether([first(23)])).toBeNull();
    expect(axesTogether([first(24)])).not.toBeNull();
    expect(axesTogether([])).toBeNull();
  });

  it('changes its sign with either axis and nothing where they are exchanged', () => {
    const share = fc.double({ min: -0.9, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(share, share, (k, wave) => {
        const of = (map: (point: Pair) => Pair) =>
          axesTogether([
            turn(({ x, y }, degrees) => {
              const radius = 1 + 0.1 * wave * Math.cos((3 * degrees * Math.PI) / 180);
              return map({ x: radius * (x + k * y), y: radius * (y + k * x) });
            }),
          ])!;
        const found = of((point) => point);
        expect(of(({ x, y }) => ({ x: -x, y }))).toBeCloseTo(-found, 9);
        expect(of(({ x, y }) => ({ x, y: -y }))).toBeCloseTo(-found, 9);
        expect(of(({ x, y }) => ({ x: y, y: x }))).toBeCloseTo(found, 9);
      }),
      { seed: 51, numRuns: 100 },
    );
  });
});
