/** Prepares the decoding of input reports: what is worked out once for a descriptor, so that a report costs little. */
import type { Control, Descriptor } from './control.ts';

/** Neighbouring controls of equal size that are read in one loop. */
export interface Run {
  readonly kind: 'uint8' | 'int8' | 'uint16' | 'int16' | 'bit' | 'unsigned' | 'signed';
  /** Index of the first control and of its value. */
  readonly first: number;
  readonly count: number;
  readonly bitOffset: number;
  readonly bitSize: number;
}

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
  readonly runs: readonly Run[];
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
  const runs: Run[] = [];
  for (let first = 0; first < controls.length;) {
    const run = runFrom(controls, first);
    runs.push(run);
    first += run.count;
  }
  const nulls = controls.flatMap((control, index) =>
    control.hasNull && !control.array
      ? [{ index, minimum: control.logicalMinimum, maximum: control.logicalMaximum }]
      : [],
  );
  return { reportId, byteLength, controls, runs, nulls };
}

function runFrom(controls: readonly Control[], first: number): Run {
  const { bitOffset, bitSize, signed } = controls[first] as Control;
  let count = 1;
  for (let next = controls[first + 1]; next !== undefined; next = controls[first + count]) {
    if (next.bitSize !== bitSize || next.signed !== signed || next.bitOffset !== bitOffset + count * bitSize) break;
    count += 1;
  }
  return { kind: kindOf(bitOffset, bitSize, signed), first, count, bitOffset, bitSize };
}

function kindOf(bitOffset: number, bitSize: number, signed: boolean): Run['kind'] {
  const aligned = bitOffset % 8 === 0;
  if (aligned && bitSize === 8) return signed ? 'int8' : 'uint8';
  if (aligned && bitSize === 16) return signed ? 'int16' : 'uint16';
  if (bitSize === 1 && !signed) return 'bit';
  return signed ? 'signed' : 'unsigned';
}
