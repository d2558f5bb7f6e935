import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import { eightBits, HandScript, twelveBits, type StickPlan } from '../guide/hand-script.ts';

/** An eight-sided gate with its corners at 0, 45 … 315°. */
function eightSided(radius: number): (degrees: number) => number {
  return (degrees) => {
    const off = ((((degrees % 45) + 45) % 45) - 22.5) * (Math.PI / 180);
    return (radius * Math.cos(Math.PI / 8)) / Math.cos(off);
  };
}

function trace(plan: Partial<StickPlan>, act: (hand: HandScript) => void): { x: number; y: number }[] {
  const hand = new HandScript({ fields: twelveBits, rest: { x: 2048, y: 2048 }, gate: () => 1500, ...plan });
  act(hand.stay(1));
  const { rim } = gatherEvidence(hand.track, 'left');
  const flat = rim?.trace ?? [];
  return Array.from({ length: flat.length / 2 }, (_, i) => ({ x: flat[2 * i] ?? 0, y: flat[2 * i + 1] ?? 0 }));
}

describe('gateTrace', () => {
  it('loses no corner', () => {
    const points = trace({ gate: eightSided(1500), intervalUs: 1000 }, (hand) => hand.push(20).turn(400, 4));
    for (let corner = 0; corner < 360; corner += 45) {
      const x = 2048 + 1500 * Math.cos((corner * Math.PI) / 180);
      const y = 2048 - 1500 * Math.sin((corner * Math.PI) / 180);
      expect(Math.min(...points.map((point) => Math.hypot(point.x - x, point.y - y)))).toBeLessThan(6);
    }
  });

  it('has at most 1,500 points, however long and noisy the capture', () => {
    const points = trace({ noise: 12, intervalUs: 1000 }, (hand) => hand.push(0).turn(8 * 360, 3));
    expect(points.length).toBeLessThanOrEqual(1500);
    expect(points.length).toBeGreaterThan(700);
  });

  it('does not cut across the gate where the stick was let go between turns', () => {
    const points = trace({}, (hand) => hand.push(0).turn(800).letGo().stay(1).push(180).turn(-800).letGo().stay(1));
    const radii = points.slice(1).map((point, i) => {
      const before = points[i] ?? point;
      return Math.hypot((point.x + before.x) / 2 - 2048, (point.y + before.y) / 2 - 2048);
    });
    expect(Math.min(...radii)).toBeGreaterThan(1200);
  });

  it('is empty of what is no turn', () => {
    const points = trace({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 110 }, (hand) =>
      hand.push(0).turn(730).letGo().stay(1).push(90).letGo().stay(1),
    );
    expect(Math.min(...points.map(({ x, y }) => Math.hypot(x - 128, y - 127)))).toBeGreaterThan(88);
  });
});
