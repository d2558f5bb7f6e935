import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Control } from '../../../core/hid/control.ts';
import { decodeInto } from '../../../core/hid/decode.ts';
import { encodeField, encodeInto, fieldLimits } from '../../../core/hid/encode.ts';
import { planReports } from '../../../core/hid/plan.ts';
import { goldenDescriptors } from '../../support/golden-descriptors.ts';
import { inputs, parsed } from '../../support/hid-bytes.ts';

function field(...descriptor: string[]): Control {
  return inputs(...descriptor)[0] as Control;
}

/** A value that the bits of the control can hold, or its null state where there is one. */
function valuesOf(control: Control): fc.Arbitrary<number> {
  const [least, greatest] = fieldLimits(control);
  const inside = { min: Math.max(least, control.logicalMinimum), max: Math.min(greatest, control.logicalMaximum) };
  const value = control.hasNull ? fc.integer(inside) : fc.integer({ min: least, max: greatest });
  const hasRoom = control.hasNull && !control.array && (inside.max < greatest || inside.min > least);
  return hasRoom ? fc.oneof(value, fc.constant(Number.NaN)) : value;
}

const plans = goldenDescriptors.flatMap((golden) =>
  [...planReports(parsed(golden.descriptorHex)).values()].map((plan) => ({
    id: golden.id,
    report: plan.reportId,
    plan,
  })),
);

describe('encodeInto', () => {
  it.each(plans)('writes what decodeInto reads back, for report $report of $id', ({ plan }) => {
    const values = fc.tuple(...plan.controls.map(valuesOf));
    fc.assert(
      fc.property(values, (given) => {
        const payload = new Uint8Array(plan.byteLength);
        const read = new Float64Array(plan.controls.length);
        expect(encodeInto(plan, given, payload)).toBeNull();
        expect(decodeInto(plan, payload, read)).toBeNull();
        expect([...read]).toEqual(given);
      }),
      { seed: 13, numRuns: 20 },
    );
  });

  it('stops at the first value that does not fit', () => {
    const [plan] = planReports(parsed('05 01 09 30 14 25 0f 75 04 95 02 81 02')).values();
    const payload = new Uint8Array(1);
    expect(plan && encodeInto(plan, [3, 16], payload)).toMatchObject({ code: 'value-does-not-fit' });
    expect(payload[0]).toBe(3);
  });
});

describe('encodeField', () => {
  it('writes a null state as a code outside the range', () => {
    const payload = new Uint8Array(1);
    encodeField(payload, field('05 01 09 39 14 25 07 75 04 95 01 81 42'), Number.NaN);
    expect(payload[0]).toBe(8);
    encodeField(payload, field('05 01 09 39 15 01 25 0f 75 04 95 01 81 42'), Number.NaN);
    expect(payload[0]).toBe(0);
  });

  it('refuses a null state that no code is left for, or that the field does not have', () => {
    const full = field('05 01 09 39 14 25 0f 75 04 95 01 81 42');
    const none = field('05 01 09 39 14 25 07 75 04 95 01 81 02');
    for (const control of [full, none])
      expect(encodeField(new Uint8Array(1), control, Number.NaN)).toMatchObject({ code: 'value-does-not-fit' });
  });

  it('refuses fractions, values beyond the bits and a payload that ends before the field', () => {
    const control = field('05 01 09 30 15 81 25 7f 75 08 95 01 81 02');
    expect(encodeField(new Uint8Array(1), control, 0.5)).toMatchObject({ code: 'value-does-not-fit' });
    expect(encodeField(new Uint8Array(1), control, 128)).toMatchObject({ code: 'value-does-not-fit' });
    expect(encodeField(new Uint8Array(1), control, -128)).toBeNull();
    expect(encodeField(new Uint8Array(), control, 0)).toMatchObject({ code: 'report-too-short' });
  });
});
