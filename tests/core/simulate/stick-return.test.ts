import { describe, expect, it } from 'vitest';
import { createChance } from '../../../core/simulate/chance.ts';
import { StickReturn } from '../../../core/simulate/stick-return.ts';

const back = { naturalHz: 16, dampingRatio: 1, friction: { x: 0.01, y: 0 }, frictionSpread: 0 };

describe('a stick let go', () => {
  it('stops short of the middle by its band of friction, on the side it came from', () => {
    for (const side of [1, -1]) {
      const stick = new StickReturn(back, createChance(1, 1));
      stick.letGo({ x: side * 0.9, y: side * 0.9 });
      const rest = stick.pass(0.5);
      expect(rest.x).toBeCloseTo(side * 0.01, 4);
      expect(Math.abs(rest.y)).toBeLessThan(1e-6);
    }
  });

  it('stays where friction holds it against the spring', () => {
    const stick = new StickReturn(back, createChance(1, 1));
    stick.letGo({ x: 0.008, y: 0 });
    expect(stick.pass(1).x).toBe(0.008);
  });

  it('swings past the middle when it is hardly damped, and still comes to rest', () => {
    const stick = new StickReturn({ ...back, dampingRatio: 0.2 }, createChance(1, 1));
    stick.letGo({ x: 1, y: 0 });
    let least = 1;
    for (let step = 0; step < 200; step += 1) least = Math.min(least, stick.pass(0.001).x);
    expect(least).toBeLessThan(-0.3);
    const settled = stick.pass(2).x;
    expect(Math.abs(settled)).toBeLessThanOrEqual(0.01);
    expect(stick.pass(1).x).toBe(settled);
  });
});
