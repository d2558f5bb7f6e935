/** What a report descriptor describes: reports and the controls in them. */

export type ReportType = 'input' | 'output' | 'feature';

/** A usage in full: page and id. */
export interface Usage {
  readonly usagePage: number;
  readonly usage: number;
}

/** One element of a variable main item, or one slot of an array main item. Bits count from the first payload bit (report id excluded). */
export interface Control {
  readonly type: ReportType;
  /** Null where the device has no report ids. */
  readonly reportId: number | null;
  /** Null for a main item that has no usage at all. */
  readonly usagePage: number | null;
  readonly usage: number | null;
  /** The selectable range of an array slot; null for a variable element. */
  readonly usageMinimum: number | null;
  readonly usageMaximum: number | null;
  readonly bitOffset: number;
  /** 1 to 32 for anything that can be decoded. */
  readonly bitSize: number;
  readonly logicalMinimum: number;
  /** Read tolerantly: unsigned where the minimum is not negative. */
  readonly logicalMaximum: number;
  /** 0 and 0 where the descriptor gives none. */
  readonly physicalMinimum: number;
  readonly physicalMaximum: number;
  readonly unit: number;
  /** A power of ten, −8 … 7. */
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
  /** The application collection the control stands in; null outside of any. */
  readonly application: Usage | null;
}

/** One report of one type; the length is in bytes without the id byte. */
export interface ReportShape {
  readonly type: ReportType;
  readonly reportId: number | null;
  readonly byteLength: number;
}

/** A whole parsed report descriptor. */
export interface Descriptor {
  readonly hasReportIds: boolean;
  readonly reports: readonly ReportShape[];
  readonly controls: readonly Control[];
}
