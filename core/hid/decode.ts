/** Decodes input reports into a caller's array. */
import type { Problem } from '../result.ts';
import type { NullCheck, ReportPlan } from './plan.ts';
import { decodeRuns } from './runs.ts';

/**
 * Writes the raw count of `plan.controls[i]` to `values[i]`, NaN for a null state; an array slot gives its raw index.
 * `payload` is the report without its id byte; bytes beyond the plan's length are left unread. Allocates nothing unless
 * the payload is short: problem `report-too-short`, and `values` stay as they were. Cost: one step a control.
 */
export function decodeInto(plan: ReportPlan, payload: Uint8Array, values: Float64Array): Problem | null {
  if (payload.length < plan.byteLength) return tooShort(plan, payload.length);
  decodeRuns(plan.runs, payload, values);
  for (let index = 0; index < plan.nulls.length; index += 1) {
    const check = plan.nulls[index] as NullCheck;
    const value = values[check.index] as number;
    if (value < check.minimum || value > check.maximum) values[check.index] = Number.NaN;
  }
  return null;
}

function tooShort(plan: ReportPlan, length: number): Problem {
  const which = plan.reportId === 0 ? 'The report' : `Report ${plan.reportId}`;
  return {
    code: 'report-too-short',
    says: `${which} has ${length} bytes where the descriptor has ${plan.byteLength}; it is cut off or belongs to another pad.`,
    at: length,
  };
}
