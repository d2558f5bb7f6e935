/** Prepares the decoding of input reports: what is worked out once for a descriptor, so that a report costs little. */
import type { Control, Descriptor } from './control.ts';
import { readingOf } from './runs.ts';

/** A control whose values outside of its logical range mean that there is none. */
export interface NullCheck {
  readonly index: number;
  readonly minimum: number;
  readonly maximum: number;
}

export interface ReportPlan {
  /** 0 where the device has no report ids. */
  readonly reportId: number;
  /** Least length of a payload, in bytes. */
  readonly byteLength: number;
  readonly controls: readonly Control[];
  /** Neighbouring controls of equal size, each run of them read in one loop (see `decodeRuns`). */
  readonly runs: Int32Array;
  readonly nulls: readonly NullCheck[];
}

/**
 * A plan for every input report, by report id (0 without ids), with its controls in order of the descriptor. Constant
 * controls and fields of more than 32 bits, which have no value to state, are left out.
 */
export function planReports(descriptor: Descriptor): ReadonlyMap<number, ReportPlan> {
  const controls = new Map<number, Control[]>();
  for (const control of descriptor.controls) {
    if (control.type !== 'input' || control.constant || control.bitSize > 32) continue;
    const reportId = control.reportId ?? 0;
    const known = controls.get(reportId);
    if (known === undefined) controls.set(reportId, [control]);
    else known.push(control);
  }
  const plans = new Map<number, ReportPlan>();
  for (const { type, reportId, byteLength } of descriptor.reports)
    if (type === 'input')
      plans.set(reportId ?? 0, planControls(reportId ?? 0, byteLength, controls.get(reportId ?? 0) ?? []));
  return plans;
}

/** A plan for some controls of one report; none may reach beyond `byteLength` or have more than 32 bits. */
export function planControls(reportId: number, byteLength: number, controls: readonly Control[]): ReportPlan {
  const runs: number[] = [];
  for (let first = 0; first < controls.length;) {
    const { bitOffset, bitSize, signed } = controls[first] as Control;
    const end = endOfRun(controls, first);
    runs.push(readingOf(bitOffset, bitSize, signed), first, end, bitOffset, bitSize);
    first = end;
  }
  const nulls = controls.flatMap((control, index) =>
    control.hasNull && !control.array
      ? [{ index, minimum: control.logicalMinimum, maximum: control.logicalMaximum }]
      : [],
  );
  return { reportId, byteLength, controls, runs: Int32Array.from(runs), nulls };
}

function endOfRun(controls: readonly Control[], first: number): number {
  const { bitOffset, bitSize, signed } = controls[first] as Control;
  let end = first + 1;
  for (let next = controls[end]; next !== undefined; next = controls[end]) {
    if (next.bitSize !== bitSize || next.signed !== signed) break;
    if (next.bitOffset !== bitOffset + (end - first) * bitSize) break;
    end += 1;
  }
  return end;
}
