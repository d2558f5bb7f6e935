/** Lines of a report log that no version writes: they are left out, and it is said that they were. */

export interface DamagedLines {
  readonly lines: number;
  /** The line of the file that the first one is, counted from 1; null where there is none. */
  readonly first: number | null;
}

/** Null where none is damaged. */
export function sayDamaged({ lines, first }: DamagedLines): string | null {
  if (first === null) return null;
  const are = lines === 1 ? '1 line of the log is' : `${lines} lines of the log are`;
  return `${are} damaged and left out, the first is line ${first}: readings or marks may be missing; use another copy of the log, or record it again.`;
}
