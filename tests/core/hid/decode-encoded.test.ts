import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Control } from '../../../core/hid/control.ts';
import { decodeInto } from '../../../core/hid/decode.ts';
import { planReports } from '../../../core/hid/plan.ts';
import { encodeInto, fieldLimits } from '../../support/encode-report.ts';
import { goldenDescriptors } from '../../support/golden-descriptors.ts';
import { parsed } from '../../support/hid-bytes.ts';

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

describe('decodeInto', () => {
  it.each(plans)('reads back what was written into report $report of $id', ({ plan }) => {
    const values = fc.tuple(...plan.controls.map(valuesOf));
    fc.assert(
      fc.property(values, (given) => {
        const payload = new Uint8Array(plan.byteLength);
        const read = new Float64Array(plan.controls.length);
        encodeInto(plan, given, payload);
        expect(decodeInto(plan, payload, read)).toBeNull();
        expect([...read]).toEqual(given);
      }),
      { seed: 13, numRuns: 20 },
    );
  });
});
