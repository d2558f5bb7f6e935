/** The global items in force, and the stack that Push and Pop keep them on (HID 1.11, 6.2.2.7). */
import { failed, type Problem } from '../result.ts';
import type { Item } from './item.ts';
import { limits } from './limits.ts';
import { globalTags } from './tags.ts';

export interface Globals {
  usagePage: number;
  logicalMinimum: number;
  logicalMaximum: Maximum;
  physicalMinimum: number;
  physicalMaximum: Maximum;
  unit: number;
  unitExponent: number;
  reportSize: number;
  /** 0 before the first Report ID item. */
  reportId: number;
  reportCount: number;
}

/** A maximum as it was read under the minimum of that moment, and what it is without a sign. */
export interface Maximum {
  readonly read: number;
  readonly unsigned: number;
}

const NOTHING: Globals = {
  usagePage: 0,
  logicalMinimum: 0,
  logicalMaximum: { read: 0, unsigned: 0 },
  physicalMinimum: 0,
  physicalMaximum: { read: 0, unsigned: 0 },
  unit: 0,
  unitExponent: 0,
  reportSize: 0,
  reportId: 0,
  reportCount: 0,
};

export class GlobalState {
  now: Globals = { ...NOTHING };
  readonly #stack: Globals[] = [];

  /** Takes one global item. Problems: stack over- and underflow, a report id outside 1 … 255, an unknown tag. */
  take(item: Item): Problem | null {
    const now = this.now;
    switch (item.tag) {
      case globalTags.usagePage:
        now.usagePage = item.unsigned & 0xffff;
        return null;
      case globalTags.logicalMinimum:
        now.logicalMinimum = item.signed;
        return null;
      case globalTags.logicalMaximum:
        now.logicalMaximum = tolerantMaximum(now.logicalMinimum, item);
        return null;
      case globalTags.physicalMinimum:
        now.physicalMinimum = item.signed;
        return null;
      case globalTags.physicalMaximum:
        now.physicalMaximum = tolerantMaximum(now.physicalMinimum, item);
        return null;
      case globalTags.unit:
        now.unit = item.unsigned;
        return null;
      case globalTags.unitExponent:
        now.unitExponent = unitExponent(item.signed);
        return null;
      case globalTags.reportSize:
        now.reportSize = item.unsigned;
        return null;
      case globalTags.reportCount:
        now.reportCount = item.unsigned;
        return null;
      case globalTags.reportId:
        return this.#takeReportId(item);
      case globalTags.push:
        return this.#push(item.at);
      case globalTags.pop:
        return this.#pop(item.at);
      default:
        return failed(
          'global-item-unknown',
          `The global item at byte ${item.at} has no known meaning, so what follows cannot be trusted; read the descriptor again.`,
          item.at,
        ).problem;
    }
  }

  #takeReportId(item: Item): Problem | null {
    if (item.unsigned < 1 || item.unsigned > 255)
      return failed(
        'report-id-invalid',
        `The report id at byte ${item.at} is ${item.unsigned}; ids go from 1 to 255, so this descriptor is damaged.`,
        item.at,
      ).problem;
    this.now.reportId = item.unsigned;
    return null;
  }

  #push(at: number): Problem | null {
    if (this.#stack.length === limits.stack)
      return failed(
        'push-too-deep',
        `The Push at byte ${at} is the ${limits.stack + 1}th without a Pop; this is no sound descriptor.`,
        at,
      ).problem;
    this.#stack.push({ ...this.now });
    return null;
  }

  #pop(at: number): Problem | null {
    const before = this.#stack.pop();
    if (before === undefined)
      return failed('pop-without-push', `The Pop at byte ${at} has no Push before it; the descriptor is damaged.`, at)
        .problem;
    this.now = before;
    return null;
  }
}

/**
 * A maximum is meant unsigned where its minimum is not negative: many devices write 255 as the single byte FF, which
 * the specification's own rule reads as −1. Linux reads it the same way.
 */
function tolerantMaximum(minimum: number, item: Item): Maximum {
  return { read: minimum < 0 ? item.signed : item.unsigned, unsigned: item.unsigned };
}

/**
 * The range that holds at a main item. The specification sets no order for the two: a maximum that stood before a
 * minimum of 0 or more and was read as negative is meant unsigned all the same.
 */
export function rangeInForce(
  minimum: number,
  maximum: Maximum,
): { readonly minimum: number; readonly maximum: number } {
  return { minimum, maximum: minimum >= 0 && maximum.read < 0 ? maximum.unsigned : maximum.read };
}

/** 0 … 15 is a nibble in two's complement (HID 1.11, 6.2.2.7); a plain signed number is believed too. */
function unitExponent(value: number): number {
  return value >= 8 && value <= 15 ? value - 16 : value;
}
