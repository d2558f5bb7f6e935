import { describe, expect, it } from 'vitest';
import { isBorneOut } from './borne-out.ts';
import { drawUnit } from './draw-unit.ts';
import type { Unit } from './unit.ts';

const unit = drawUnit({ seed: 7, pad: 'sensor12', gate: 'round', faults: [], slip: null });

function withPart(change: Partial<Unit['parts']['left']>, of = unit): Unit {
  return { ...of, parts: { ...of.parts, left: { ...of.parts.left, ...change } } };
}

describe('a failed finding of a sound stick', () => {
  it('is borne out by a tolerance beyond the limit, and not by one within it', () => {
    expect(isBorneOut('seat-not-flat', withPart({ seat: { x: 0.3, y: 0.3 }, springOff: { x: 0, y: 0 } }))).toBe(true);
    expect(isBorneOut('seat-not-flat', withPart({ seat: { x: 0.3, y: 0.2 }, springOff: { x: 0, y: 0 } }))).toBe(false);
    expect(isBorneOut('skewed-part', withPart({ skew: -3.6 }))).toBe(true);
    expect(isBorneOut('skewed-part', withPart({ skew: 3.4 }))).toBe(false);
    expect(isBorneOut('turned-part', withPart({ turned: -5.1 }))).toBe(true);
    const law = unit.parts.left.x;
    expect(isBorneOut('short-range', withPart({ x: { ...law, plusGain: 1, minusGain: 0.985 } }))).toBe(true);
    expect(isBorneOut('short-range', withPart({ x: { ...law, plusGain: 1, minusGain: 0.995 } }))).toBe(false);
  });

  it('is borne out of a middle that is off, but not behind a mapping that made it the middle', () => {
    const off = { x: { ...unit.parts.left.x, offset: 0.05 } };
    expect(isBorneOut('off-centre-part', withPart(off))).toBe(true);
    const plain = drawUnit({ seed: 7, pad: 'reported8', gate: 'round', faults: [], slip: null });
    expect(isBorneOut('off-centre-part', withPart(off, plain))).toBe(false);
  });

  it('of late reports is borne out by what the link does, and nothing else of a sound stick is so', () => {
    const link = (onChange: boolean): Unit => ({ ...unit, plan: { ...unit.plan, onChange, loss: null } });
    expect([isBorneOut('late-reports', link(true)), isBorneOut('late-reports', link(false))]).toEqual([true, false]);
    expect(isBorneOut('signal-lost', unit)).toBe(false);
  });
});
