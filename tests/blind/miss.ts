/** A demand that a run of the blind test missed. */
export interface Miss {
  /** Which: `sensor12 skew far`. */
  readonly where: string;
  readonly says: string;
  /** Why it is only reported, known as it is; null where it fails the run. */
  readonly known: string | null;
}
