/** Decodes input reports into a caller's array. */
import type { Problem } from '../result.ts';
import { signedBits, unsignedBits } from './bits.ts';
import type { ReportPlan, Run } from './plan.ts';

/**
 * Writes the raw count of `plan.controls[i]` to `values[i]`, NaN for a null state; an array slot gives its raw index.
 * `payload` is the report without its id byte; bytes beyond the plan's length are left unread. Allocates nothing unless
 * the payload is short: problem `report-too-short`, and `values` stay as they were. Cost: one step a control.
 */
export function decodeInto(plan: ReportPlan, payload: Uint8Array, values: Float64Array): Problem | null {
  if (payload.length < plan.byteLength) return tooShort(plan, payload.length);
  const { runs, nulls } = plan;
  for (let index = 0; index < runs.length; index += 1) decodeRun(runs[index] as Run, payload, values);
  for (let index = 0; index < nulls.length; index += 1) {
    const check = nulls[index];
    if (check === undefined) continue;
    const value = values[check.index] ?? Number.NaN;
    if (value < check.minimum || value > check.maximum) values[check.index] = Number.NaN;
  }
  return null;
}

function decodeRun(run: Run, payload: Uint8Array, values: Float64Array): void {
  const { first, count, bitOffset, bitSize } = run;
  const byte = bitOffset >>> 3;
  // The length was checked: every index below is within the payload, so no fallback is needed in the loops.
  switch (run.kind) {
    case 'uint8':
      for (let index = 0; index < count; index += 1) values[first + index] = payload[byte + index] as number;
      break;
    case 'int8':
      for (let index = 0; index < count; index += 1)
        values[first + index] = ((payload[byte + index] as number) << 24) >> 24;
      break;
    case 'uint16':
      for (let index = 0, at = byte; index < count; index += 1, at += 2)
        values[first + index] = (payload[at] as number) | ((payload[at + 1] as number) << 8);
      break;
    case 'int16':
      for (let index = 0, at = byte; index < count; index += 1, at += 2)
        values[first + index] = (((payload[at] as number) << 16) | ((payload[at + 1] as number) << 24)) >> 16;
      break;
    case 'bit':
      for (let index = 0, bit = bitOffset; index < count; index += 1, bit += 1)
        values[first + index] = ((payload[bit >>> 3] as number) >>> (bit & 7)) & 1;
      break;
    case 'unsigned':
      for (let index = 0; index < count; index += 1)
        values[first + index] = unsignedBits(payload, bitOffset + index * bitSize, bitSize);
      break;
    case 'signed':
      for (let index = 0; index < count; index += 1)
        values[first + index] = signedBits(payload, bitOffset + index * bitSize, bitSize);
      break;
  }
}

function tooShort(plan: ReportPlan, length: number): Problem {
  const which = plan.reportId === 0 ? 'The report' : `Report ${plan.reportId}`;
  return {
    code: 'report-too-short',
    says: `${which} has ${length} bytes where the descriptor has ${plan.byteLength}; it is cut off or belongs to another pad.`,
    at: length,
  };
}
