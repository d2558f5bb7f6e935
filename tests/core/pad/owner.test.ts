import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kinshipOf, ownerSchema, sayOwner, type PadOwner } from '../../../core/pad/owner.ts';

const pad = (serial: string | null, unit: string | null = null, productId = 10): PadOwner => ({
  vendorId: 0x1209,
  productId,
  serial,
  unit,
});

describe('kinship of two pads', () => {
  it.each([
    ['one serial number on both sides', pad('a'), pad('a'), 'same'],
    ['two serial numbers', pad('a'), pad('b'), 'other'],
    ['one unit on both sides', pad(null, '01'), pad(null, '01'), 'same'],
    ['two units', pad(null, '01'), pad(null, '02'), 'other'],
    ['one serial number, two units', pad('a', '01'), pad('a', '02'), 'other'],
    ['one unit, two serial numbers', pad('a', '01'), pad('b', '01'), 'other'],
    ['one serial number, the unit known on one side', pad('a', '01'), pad('a'), 'same'],
    ['a serial number here, a unit there', pad('a'), pad(null, '01'), 'unknown'],
    ['the product alone', pad(null), pad(null), 'unknown'],
    ['the serial number on one side', pad('a'), pad(null), 'unknown'],
    ['two products', pad('a'), pad('a', null, 11), 'other'],
    ['a serial number that is none: all zeros', pad('000000000000'), pad('000000000000'), 'unknown'],
    ['an empty serial number', pad(''), pad(''), 'unknown'],
    ['all zeros against a real one', pad('0000'), pad('a'), 'unknown'],
  ] as const)('%s', (_name, one, other, kinship) => {
    expect(kinshipOf(one, other)).toBe(kinship);
    expect(kinshipOf(other, one)).toBe(kinship);
  });

  it('is not known where nothing is known of one side', () => {
    expect(kinshipOf(null, pad('a', '01'))).toBe('unknown');
    expect(kinshipOf(pad('a'), null)).toBe('unknown');
  });

  it('is never "same" without one equal mark known on both sides, and never "same" over one that differs', () => {
    const mark = fc.option(fc.constantFrom('a', 'b', '0000', ''), { nil: null });
    const owner = fc.record({
      vendorId: fc.constantFrom(1, 2),
      productId: fc.constantFrom(1, 2),
      serial: mark,
      unit: mark,
    });
    fc.assert(
      fc.property(owner, owner, (one, other) => {
        if (kinshipOf(one, other) !== 'same') return;
        const tells = (text: string | null): text is string => text === 'a' || text === 'b';
        const isEqual =
          (tells(one.serial) && one.serial === other.serial) || (one.unit !== null && one.unit === other.unit);
        const isTold = tells(one.serial) && tells(other.serial) && one.serial !== other.serial;
        expect(isEqual && !isTold && one.productId === other.productId && one.vendorId === other.vendorId).toBe(true);
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe('an owner', () => {
  it('is read from older files, which say less', () => {
    expect(ownerSchema.parse({ vendorId: 1, productId: 2, product: 'Pad' })).toEqual({
      vendorId: 1,
      productId: 2,
      serial: null,
      unit: null,
    });
  });

  it('is said by what tells it apart', () => {
    expect(sayOwner(pad('a'))).toBe('1209:000a, serial number a');
    expect(sayOwner(pad('0000', '0c'))).toBe('1209:000a, unit 0c');
    expect(sayOwner(pad(null))).toBe('1209:000a, serial number not known');
  });
});
