/** What a report descriptor describes: reports and the controls in them. */

export type ReportType = 'input' | 'output' | 'feature';

/** A usage in full: page and id. */
export interface Usage {
  readonly usagePage: number;
  readonly usage: number;
}

/**
 * One element of a variable main item, or one slot of an array main item. Bits count from the first payload bit (report
 * id excluded).
 */
export interface Control {
  readonly type: ReportType;
  /** Null where reports of this type carry no id. */
  readonly reportId: number | null;
  /** The page in force where the main item has no usage at all; 0 where none was ever named. */
  readonly usagePage: number | null;
  /** Null for a main item that has no usage at all; of an array slot the first it can select. */
  readonly usage: number | null;
  /** The selectable range of an array slot; null for a variable element. */
  readonly usageMinimum: number | null;
  readonly usageMaximum: number | null;
  readonly bitOffset: number;
  /** 1 to 32 for anything that can be decoded; a longer one is listed but left out of plans. */
  readonly bitSize: number;
  readonly logicalMinimum: number;
  /** Read tolerantly: unsigned where the minimum is not negative. */
  readonly logicalMaximum: number;
  /** 0 and 0 where the descriptor gives none. */
  readonly physicalMinimum: number;
  readonly physicalMaximum: number;
  readonly unit: number;
  /** A power of ten: −8 … 7 from the specification's nibble; larger magnitudes as they stand in the item. */
  readonly unitExponent: number;
  /** Values are sign-extended: the logical minimum is negative. */
  readonly signed: boolean;
  readonly hasNull: boolean;
  readonly relative: boolean;
  readonly array: boolean;
  readonly constant: boolean;
  /** Further usages of the same element from a delimited set. */
  readonly aliases: readonly Usage[];
  /** For an array slot: the usage each index selects, in order; empty otherwise. */
  readonly choices: readonly Usage[];
  /** The outermost application collection the control stands in: what the device is; null outside of any. */
  readonly application: Usage | null;
  /** Ordinal of the innermost collection of any kind, counted through the descriptor; null outside of any. */
  readonly collection: number | null;
}

/** One report of one type; the length is in bytes without the id byte. */
export interface ReportShape {
  readonly type: ReportType;
  readonly reportId: number | null;
  readonly byteLength: number;
}

/** A whole parsed report descriptor. */
export interface Descriptor {
  /** Input reports begin with an id byte (where there are none: reports of any type do). */
  readonly hasReportIds: boolean;
  readonly reports: readonly ReportShape[];
  readonly controls: readonly Control[];
}
