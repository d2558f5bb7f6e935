/** Overlapping Allan deviation of the longest gap-free, evenly timed dwell, per axis, in counts. */
export interface AllanMeasure {
  readonly tauUs: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
}
