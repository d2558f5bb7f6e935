/** Input reports as the command `decode` prints them. */
import { done, failed, type Result } from '../result.ts';
import type { Control, Descriptor, Usage } from './control.ts';
import { decodeInto } from './decode.ts';
import { readHex } from './hex.ts';
import { planReports, type ReportPlan } from './plan.ts';
import { pages, usageKey } from './usage-names.ts';

export interface ReportDescription {
  /** Null where the device has no report ids. */
  readonly reportId: number | null;
  /**
   * By `PAGE:USAGE`, `#2`, `#3` … for further controls of the same usage; null for a null state; 1 for every usage that
   * an array selects. Controls without usage are not listed, nor are buttons, unless they have more than two values.
   */
  readonly values: Readonly<Record<string, number | null>>;
  /** Usages of page 9 that are down, each once, ascending. */
  readonly buttons: readonly number[];
}

export interface ReportDescriber {
  /** `bytes` begin with the report id where the device has ids. Problems: no bytes, unknown id, too short. */
  describe(bytes: Uint8Array): Result<ReportDescription>;
  /** The same for hex text; also the problems of `readHex`. */
  describeHex(text: string): Result<ReportDescription>;
}

/** Everything that can be worked out beforehand is worked out once. */
export function createReportDescriber(descriptor: Descriptor): ReportDescriber {
  const plans = new Map([...planReports(descriptor)].map(([reportId, plan]) => [reportId, labelled(plan)]));
  function describe(bytes: Uint8Array): Result<ReportDescription> {
    const first = bytes[0];
    if (first === undefined) return failed('report-empty', 'The report has no bytes; give it in full.', 0);
    const reportId = descriptor.hasReportIds ? first : 0;
    const known = plans.get(reportId);
    if (known === undefined) return unknownReport(descriptor, reportId, [...plans.keys()]);
    const problem = decodeInto(known.plan, descriptor.hasReportIds ? bytes.subarray(1) : bytes, known.decoded);
    if (problem !== null) return { ok: false, problem };
    return done({ reportId: descriptor.hasReportIds ? reportId : null, ...readOut(known) });
  }
  return {
    describe,
    describeHex(text) {
      const bytes = readHex(text);
      return bytes.ok ? describe(bytes.value) : bytes;
    },
  };
}

interface Labelled {
  readonly plan: ReportPlan;
  readonly decoded: Float64Array;
  /** Key of each control's value; null where it has none of its own. */
  readonly keys: readonly (string | null)[];
}

function labelled(plan: ReportPlan): Labelled {
  const taken = new Map<string, number>();
  const keys = plan.controls.map((control) => {
    const { usagePage, usage } = control;
    if (control.array || usagePage === null || usage === null || isSwitch(control)) return null;
    const key = usageKey({ usagePage, usage });
    const number = (taken.get(key) ?? 0) + 1;
    taken.set(key, number);
    return number === 1 ? key : `${key}#${number}`;
  });
  return { plan, keys, decoded: new Float64Array(plan.controls.length) };
}

function readOut({ plan, keys, decoded }: Labelled): Pick<ReportDescription, 'values' | 'buttons'> {
  const values: Record<string, number | null> = {};
  const down = new Set<number>();
  for (const [index, control] of plan.controls.entries()) {
    const value = decoded[index] ?? Number.NaN;
    const key = keys[index] ?? null;
    const selected = control.array ? selectedUsage(control, value) : null;
    if (key !== null) values[key] = Number.isNaN(value) ? null : value;
    if (selected !== null && selected.usagePage !== pages.button) values[usageKey(selected)] = 1;
    if (selected?.usagePage === pages.button) down.add(selected.usage);
    else if (!control.array && control.usagePage === pages.button && control.usage !== null && isDown(value))
      down.add(control.usage);
  }
  // Usage 0 of the button page means that no button is pressed.
  down.delete(0);
  return { values, buttons: [...down].sort((one, other) => one - other) };
}

/** What an array slot selects; null for an index that has no choice, and for usage 0: "none" on the pages of arrays. */
function selectedUsage(slot: Control, value: number): Usage | null {
  const choice = slot.choices[value - slot.logicalMinimum];
  return choice === undefined || choice.usage === 0 ? null : choice;
}

function isSwitch(control: Control): boolean {
  return control.usagePage === pages.button && control.logicalMaximum - control.logicalMinimum <= 1;
}

function isDown(value: number): boolean {
  return value !== 0 && !Number.isNaN(value);
}

function unknownReport(descriptor: Descriptor, reportId: number, known: readonly number[]): Result<never> {
  if (known.length === 0)
    return failed('report-unknown', 'The descriptor has no input report; check that it belongs to this pad.', 0);
  if (!descriptor.hasReportIds)
    return failed(
      'report-unknown',
      'The descriptor has no input report without an id; check that it belongs to this pad.',
      0,
    );
  return failed(
    'report-unknown',
    `The descriptor has no input report ${reportId}, only ${known.join(', ')}; check that both belong to the same pad.`,
    0,
  );
}
