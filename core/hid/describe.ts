/** A parsed descriptor as the command `descriptor` prints it. */
import type { Control, Descriptor, ReportShape, Usage } from './control.ts';

/** Keys and their order are fixed by the format; `aliases`, `application` and `choices` are further keys. */
export interface ControlDescription {
  readonly type: Control['type'];
  readonly reportId: number | null;
  readonly usagePage: number | null;
  readonly usage: number | null;
  readonly usageMinimum: number | null;
  readonly usageMaximum: number | null;
  readonly bitOffset: number;
  readonly bitSize: number;
  readonly logicalMinimum: number;
  readonly logicalMaximum: number;
  readonly physicalMinimum: number;
  readonly physicalMaximum: number;
  readonly unit: number;
  readonly unitExponent: number;
  readonly signed: boolean;
  readonly hasNull: boolean;
  readonly relative: boolean;
  readonly array: boolean;
  readonly constant: boolean;
  readonly aliases: readonly Usage[];
  readonly application: Usage | null;
  /** What the indices of an array select, where that is not just its usage range in order; else null. */
  readonly choices: readonly Usage[] | null;
}

export interface DescriptorDescription {
  readonly reports: readonly ReportShape[];
  readonly controls: readonly ControlDescription[];
}

export function describeDescriptor(descriptor: Descriptor): DescriptorDescription {
  // The slots of an array share their list, which may be long: it is looked through once.
  const listed = new Map<readonly Usage[], readonly Usage[] | null>();
  return {
    reports: descriptor.reports.map(({ type, reportId, byteLength }) => ({ type, reportId, byteLength })),
    controls: descriptor.controls.map((control) => {
      const known = listed.get(control.choices);
      const choices = known === undefined ? (isInRangeOrder(control) ? null : control.choices) : known;
      listed.set(control.choices, choices);
      return describeControl(control, choices);
    }),
  };
}

function describeControl(control: Control, choices: ControlDescription['choices']): ControlDescription {
  return {
    type: control.type,
    reportId: control.reportId,
    usagePage: control.usagePage,
    usage: control.usage,
    usageMinimum: control.usageMinimum,
    usageMaximum: control.usageMaximum,
    bitOffset: control.bitOffset,
    bitSize: control.bitSize,
    logicalMinimum: control.logicalMinimum,
    logicalMaximum: control.logicalMaximum,
    physicalMinimum: control.physicalMinimum,
    physicalMaximum: control.physicalMaximum,
    unit: control.unit,
    unitExponent: control.unitExponent,
    signed: control.signed,
    hasNull: control.hasNull,
    relative: control.relative,
    array: control.array,
    constant: control.constant,
    aliases: control.aliases,
    application: control.application,
    choices,
  };
}

function isInRangeOrder({ choices, usagePage, usageMinimum }: Control): boolean {
  return choices.every(
    (choice, index) => choice.usagePage === usagePage && choice.usage === (usageMinimum ?? 0) + index,
  );
}
