/** Overlapping Allan deviation of the longest gap-free, evenly timed dwell, per axis, in counts. */
export interface AllanMeasure {
  readonly tauUs: readonly number[];
  /** Null on an axis whose count never changed: its noise is below the step. */
  readonly x: readonly number[] | null;
  readonly y: readonly number[] | null;
}
