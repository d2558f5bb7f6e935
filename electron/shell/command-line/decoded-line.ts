/** One report as `decode` prints it: values by usage, the buttons that are down. */
import { decodeInto } from '../../../core/hid/decode.ts';
import type { Control, Descriptor } from '../../../core/hid/control.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { planReports, type ReportPlan } from '../../../core/hid/plan.ts';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import { outputHead, type OutputHead } from './output.ts';

const BUTTON_PAGE = 9;

export interface DecodedReport extends OutputHead {
  readonly reportId: number | null;
  /** By `PAGE:USAGE`; null for a null state. */
  readonly values: Readonly<Record<string, number | null>>;
  readonly buttons: readonly number[];
}

/** Decodes reports given as hex, each with its id byte where the device has ids. */
export function reportDecoder(descriptor: Descriptor): (hex: string) => Result<DecodedReport> {
  const plans = planReports(descriptor);
  const slots = new Map([...plans].map(([id, plan]) => [id, new Float64Array(plan.controls.length)]));
  return (hex) => {
    const bytes = readHex(hex);
    if (!bytes.ok) return bytes;
    if (bytes.value.length === 0)
      return failed('report-empty', 'A report of 0 bytes says nothing; give its bytes as hex.');
    const id = descriptor.hasReportIds ? (bytes.value[0] ?? 0) : 0;
    const plan = plans.get(id);
    const values = slots.get(id);
    if (plan === undefined || values === undefined) return { ok: false, problem: unknownReport(id, plans, descriptor) };
    const problem = decodeInto(plan, descriptor.hasReportIds ? bytes.value.subarray(1) : bytes.value, values);
    if (problem !== null) return { ok: false, problem };
    return {
      ok: true,
      value: { ...outputHead('decoded-report'), reportId: descriptor.hasReportIds ? id : null, ...sort(plan, values) },
    };
  };
}

function sort(plan: ReportPlan, decoded: Float64Array): Pick<DecodedReport, 'values' | 'buttons'> {
  const values: Record<string, number | null> = {};
  const buttons: number[] = [];
  for (const [index, control] of plan.controls.entries()) {
    const value = decoded[index] ?? Number.NaN;
    if (control.array) {
      const chosen = chosenButton(control, value);
      if (chosen !== null) buttons.push(chosen);
    } else if (control.usagePage === BUTTON_PAGE && control.usage !== null) {
      if (value > 0) buttons.push(control.usage);
    } else values[freeKey(values, control)] = Number.isNaN(value) ? null : value;
  }
  return { values, buttons };
}

/** The button that an array slot names, or null where it names none. */
function chosenButton(control: Control, value: number): number | null {
  const choice = control.choices[value - control.logicalMinimum];
  return choice !== undefined && choice.usagePage === BUTTON_PAGE && choice.usage > 0 ? choice.usage : null;
}

/** `PAGE:USAGE`, with `#2`, `#3` … for further controls of the same usage. */
function freeKey(taken: Readonly<Record<string, unknown>>, control: Control): string {
  const key = `${word(control.usagePage)}:${word(control.usage)}`;
  if (!(key in taken)) return key;
  let number = 2;
  while (`${key}#${number}` in taken) number += 1;
  return `${key}#${number}`;
}

function word(value: number | null): string {
  return (value ?? 0).toString(16).toUpperCase().padStart(4, '0');
}

function unknownReport(id: number, plans: ReadonlyMap<number, ReportPlan>, descriptor: Descriptor): Problem {
  const known = [...plans.keys()];
  const says = descriptor.hasReportIds
    ? `The descriptor has no input report ${id}${known.length === 0 ? '' : ` (it has ${known.join(', ')})`}; check that both are of one pad.`
    : 'The descriptor has no input report; check that it is the pad’s own.';
  return { code: 'report-unknown', says };
}
