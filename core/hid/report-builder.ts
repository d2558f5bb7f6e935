/** Lays the elements of main items into their reports, one after the other. */
import { failed, type Problem } from '../result.ts';
import type { Control, ReportShape, ReportType, Usage } from './control.ts';
import { rangeInForce, type Globals } from './global-state.ts';
import type { Item } from './item.ts';
import { limits } from './limits.ts';
import type { UsageSet } from './local-state.ts';
import { fieldFlags } from './tags.ts';
import { UsageMaker } from './usage-list.ts';

interface Report {
  readonly type: ReportType;
  readonly reportId: number;
  bits: number;
}

type Draft = { -readonly [Key in keyof Control]: Control[Key] };

/** Where a main item stands. */
export interface Place {
  readonly application: Usage | null;
  readonly collection: number | null;
}

const NOTHING: readonly never[] = [];

export class ReportBuilder {
  readonly #reports = new Map<string, Report>();
  readonly #controls: Draft[] = [];
  readonly #usages = new UsageMaker();

  /**
   * Adds the elements of an Input, Output or Feature item. Problems: a logical range that ends before it begins, more
   * bits or controls than the limits. Elements of no bits take no room and are no controls.
   */
  add(type: ReportType, item: Item, globals: Globals, sets: readonly UsageSet[], place: Place): Problem | null {
    const { reportSize: size, reportCount: count } = globals;
    const report = this.#report(type, globals.reportId);
    const bitOffset = report.bits;
    if (bitOffset + size * count > limits.reportBytes * 8)
      return failed(
        'report-too-long',
        `The item at byte ${item.at} makes its report longer than ${limits.reportBytes} bytes; the descriptor is damaged.`,
        item.at,
      ).problem;
    report.bits += size * count;
    const logical = rangeInForce(globals.logicalMinimum, globals.logicalMaximum);
    if (logical.maximum < logical.minimum)
      return failed(
        'logical-range-reversed',
        `At byte ${item.at} the logical maximum ${logical.maximum} is below the minimum ${logical.minimum}; the descriptor is damaged.`,
        item.at,
      ).problem;
    const physical = rangeInForce(globals.physicalMinimum, globals.physicalMaximum);
    if (size === 0 || count === 0) return null;
    const constant = (item.unsigned & fieldFlags.constant) !== 0;
    const spanned = constant && count > limits.paddingElements;
    const elements = spanned ? 1 : count;
    if (this.#controls.length + elements > limits.controls)
      return failed(
        'controls-too-many',
        `With the item at byte ${item.at} the descriptor has more than ${limits.controls} controls; this is no sound descriptor.`,
        item.at,
      ).problem;
    const array = !constant && (item.unsigned & fieldFlags.variable) === 0;
    const common: Draft = {
      type,
      reportId: report.reportId,
      usagePage: globals.usagePage,
      usage: null,
      usageMinimum: null,
      usageMaximum: null,
      bitOffset,
      bitSize: spanned ? size * count : size,
      logicalMinimum: logical.minimum,
      logicalMaximum: logical.maximum,
      physicalMinimum: physical.minimum,
      physicalMaximum: physical.maximum,
      unit: globals.unit,
      unitExponent: globals.unitExponent,
      signed: logical.minimum < 0,
      hasNull: (item.unsigned & fieldFlags.nullState) !== 0,
      relative: (item.unsigned & fieldFlags.relative) !== 0,
      array,
      constant,
      aliases: NOTHING,
      choices: NOTHING,
      application: place.application,
      collection: place.collection,
    };
    return array ? this.#addSlots(common, count, sets, item.at) : this.#addElements(common, elements, sets, item.at);
  }

  /** All reports in order of appearance, and their controls in order of the descriptor. */
  finish(): { readonly hasReportIds: boolean; readonly reports: ReportShape[]; readonly controls: Control[] } {
    const reports = [...this.#reports.values()];
    // Whether reports carry ids is settled for each type on its own: some devices number only their feature reports.
    const numbered = new Set(reports.filter((report) => report.reportId > 0).map((report) => report.type));
    for (const control of this.#controls) if (!numbered.has(control.type)) control.reportId = null;
    const hasInput = reports.some((report) => report.type === 'input');
    return {
      hasReportIds: hasInput ? numbered.has('input') : numbered.size > 0,
      reports: reports.map(({ type, reportId, bits }) => ({
        type,
        reportId: numbered.has(type) ? reportId : null,
        byteLength: Math.ceil(bits / 8),
      })),
      controls: this.#controls,
    };
  }

  #report(type: ReportType, reportId: number): Report {
    const key = `${type} ${reportId}`;
    const known = this.#reports.get(key);
    if (known !== undefined) return known;
    const report = { type, reportId, bits: 0 };
    this.#reports.set(key, report);
    return report;
  }

  #addElements(common: Draft, count: number, sets: readonly UsageSet[], at: number): Problem | null {
    if (sets.length === 0) {
      for (let index = 0; index < count; index += 1) this.#place(common, index);
      return null;
    }
    const usages = this.#usages.elements(sets, count, at);
    if (!usages.ok) return usages.problem;
    for (const [index, { usage, aliases }] of usages.value.entries()) {
      const control = this.#place(common, index);
      control.usagePage = usage.usagePage;
      control.usage = usage.usage;
      control.aliases = aliases;
    }
    return null;
  }

  #addSlots(common: Draft, count: number, sets: readonly UsageSet[], at: number): Problem | null {
    if (sets.length > 0) {
      const indices = common.logicalMaximum - common.logicalMinimum + 1;
      const selection = this.#usages.selection(sets, indices, at);
      if (!selection.ok) return selection.problem;
      Object.assign(common, selection.value);
    }
    for (let index = 0; index < count; index += 1) this.#place(common, index);
    return null;
  }

  #place(common: Draft, index: number): Draft {
    const control = { ...common, bitOffset: common.bitOffset + index * common.bitSize };
    this.#controls.push(control);
    return control;
  }
}
