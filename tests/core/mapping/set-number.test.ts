import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAPPING_NUMBERS, withNumber } from '../../../core/mapping/mapping-number.ts';
import { checkByHand, nearestNumber, setNumber, type HandLimits } from '../../../core/mapping/set-number.ts';
import { sensorFields } from '../../support/fields.ts';

const limits: HandLimits = { fields: sensorFields, layer: null };
const mapping = { x: { min: 1000, centre: 2000, max: 3000 }, y: { min: 900, centre: 2100, max: 3100 } };

function refusal(of: (typeof MAPPING_NUMBERS)[number], value: number, within = limits): string {
  const set = setNumber(mapping, of, value, within);
  return set.ok ? 'taken' : set.problem.says;
}

describe('setNumber', () => {
  it('sets one number and leaves the others', () => {
    const set = setNumber(mapping, 'y.centre', 2050, limits);
    expect(set).toEqual({ ok: true, value: { ...mapping, y: { min: 900, centre: 2050, max: 3100 } } });
  });

  it('refuses crossed edges, a span of nothing and what is no number, by name', () => {
    expect(refusal('x.min', 2001)).toContain('x.min 2001 is not below x.centre 2000');
    expect(refusal('x.max', 2000)).toContain('x.max 2000 is not above x.centre 2000');
    expect(refusal('y.max', Number.NaN)).toContain('y.max is not a number');
    expect(refusal('y.min', 900.25)).toContain('whole count');
  });

  it('refuses a count that the field never reports, and one that the layer cannot hold', () => {
    expect(refusal('x.max', 4096)).toContain('the field reports 0 to 4095');
    const layer = { whole: true, least: 0, greatest: 2999 };
    expect(refusal('x.min', 1001, { fields: sensorFields, layer })).toContain('the layer holds 0 to 2999');
  });

  it('takes a centre between two counts only where no layer wants whole ones', () => {
    expect(refusal('x.centre', 2000.5)).toBe('taken');
    expect(refusal('x.centre', 2000.5, { ...limits, layer: { whole: true, least: 0, greatest: 4095 } })).toContain(
      'give a whole count',
    );
  });
});

describe('nearestNumber', () => {
  it('stops a dragged mark one count before its neighbour and at the limits of the field', () => {
    expect(nearestNumber(mapping, 'x.min', 2500, limits)).toBe(1999);
    expect(nearestNumber(mapping, 'x.min', -30, limits)).toBe(0);
    expect(nearestNumber(mapping, 'x.centre', 3600, limits)).toBe(2999);
    expect(nearestNumber(mapping, 'y.max', 9999, limits)).toBe(4095);
  });

  it('always gives a mapping that holds, whatever is asked for', () => {
    fc.assert(
      fc.property(fc.constantFrom(...MAPPING_NUMBERS), fc.double({ min: -1e5, max: 1e5, noNaN: true }), (of, value) => {
        const near = nearestNumber(mapping, of, value, limits);
        expect(checkByHand(withNumber(mapping, of, near), limits).ok).toBe(true);
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});
