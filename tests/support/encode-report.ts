/** Writes values into reports: what decoding has to read back. */
import type { Control } from '../../core/hid/control.ts';
import type { ReportPlan } from '../../core/hid/plan.ts';

/** Writes one value into a payload (without the id byte); NaN writes a null state. Throws where it does not fit. */
export function encodeField(payload: Uint8Array, control: Control, value: number): void {
  const { bitOffset, bitSize } = control;
  const code = Number.isNaN(value) ? nullCode(control) : value;
  const [least, greatest] = fieldLimits(control);
  if (!Number.isInteger(code) || code < least || code > greatest || bitOffset + bitSize > payload.length * 8)
    throw new Error(`${String(value)} does not fit ${String(bitSize)} bits at bit ${String(bitOffset)}.`);
  for (let bit = 0; bit < bitSize; bit += 1) {
    const at = bitOffset + bit;
    const mask = 1 << (at & 7);
    const byte = payload[at >>> 3] ?? 0;
    payload[at >>> 3] = (code >>> bit) & 1 ? byte | mask : byte & ~mask;
  }
}

/** Writes `values[i]` for every `plan.controls[i]`; bits of no control stay as they are. */
export function encodeInto(plan: ReportPlan, values: readonly number[], payload: Uint8Array): void {
  for (const [index, control] of plan.controls.entries()) encodeField(payload, control, values[index] ?? Number.NaN);
}

/** Least and greatest number that the bits can hold. */
export function fieldLimits(control: Control): readonly [number, number] {
  const codes = 2 ** control.bitSize;
  return control.signed ? [-codes / 2, codes / 2 - 1] : [0, codes - 1];
}

/** The code next to the logical range; NaN where there is no null state or the range fills the field. */
function nullCode(control: Control): number {
  const [least, greatest] = fieldLimits(control);
  if (!control.hasNull) return Number.NaN;
  if (control.logicalMaximum < greatest) return control.logicalMaximum + 1;
  return control.logicalMinimum > least ? control.logicalMinimum - 1 : Number.NaN;
}
