/** Writes values into reports: the inverse of decoding. */
import { failed, type Problem } from '../result.ts';
import { writeBits } from './bits.ts';
import type { Control } from './control.ts';
import type { ReportPlan } from './plan.ts';

/**
 * Writes one value into a payload (without the id byte); NaN writes a null state. Problems: the payload ends before the
 * field; the value is not whole or does not fit the field; a null state that the field cannot hold.
 */
export function encodeField(payload: Uint8Array, control: Control, value: number): Problem | null {
  const { bitOffset, bitSize } = control;
  if (bitOffset + bitSize > payload.length * 8)
    return failed(
      'report-too-short',
      `The report ends before bit ${bitOffset + bitSize}; make it longer.`,
      payload.length,
    ).problem;
  const count = Number.isNaN(value) ? nullCount(control) : value;
  const [least, greatest] = fieldLimits(control);
  if (!Number.isInteger(count) || count < least || count > greatest)
    return failed('value-does-not-fit', `${value} does not fit a field of ${bitSize} bits at bit ${bitOffset}.`)
      .problem;
  writeBits(payload, bitOffset, bitSize, count);
  return null;
}

/** Writes `values[i]` for every `plan.controls[i]`; stops at the first problem. Bits of no control stay as they are. */
export function encodeInto(plan: ReportPlan, values: ArrayLike<number>, payload: Uint8Array): Problem | null {
  for (const [index, control] of plan.controls.entries()) {
    const problem = encodeField(payload, control, values[index] ?? Number.NaN);
    if (problem !== null) return problem;
  }
  return null;
}

/** Least and greatest number that the bits can hold. */
export function fieldLimits(control: Control): readonly [number, number] {
  const codes = 2 ** control.bitSize;
  return control.signed ? [-codes / 2, codes / 2 - 1] : [0, codes - 1];
}

/** The code next to the logical range; NaN where there is no null state or the range fills the field. */
function nullCount(control: Control): number {
  const [least, greatest] = fieldLimits(control);
  if (!control.hasNull) return Number.NaN;
  if (control.logicalMaximum < greatest) return control.logicalMaximum + 1;
  return control.logicalMinimum > least ? control.logicalMinimum - 1 : Number.NaN;
}
