/** Errors are values: what every function that can fail on bad input returns. */

/** One thing that went wrong, in one plain sentence. */
export interface Problem {
  /** Stable machine-readable name in kebab-case, e.g. `report-too-short`. */
  readonly code: string;
  /** One sentence: what happened and what to do. */
  readonly says: string;
  /** Where in the input, when that can be told: a byte offset, or a line counted from 1. */
  readonly at?: number | undefined;
}

/** A value, or the problem that kept it from being made. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Wraps a value that could be made. */
export function done<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** Wraps a problem; `at` is left out when the place is not known. */
export function failed(code: string, says: string, at?: number): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: at === undefined ? { code, says } : { code, says, at } };
}
