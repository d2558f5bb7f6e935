/** One sample of a stick on its rim, after the running median. */
export interface RimSample {
  readonly t: number;
  /** Raw counts as reported. */
  readonly x: number;
  readonly y: number;
  /** Counts from the point that directions are taken about, y up. */
  readonly dx: number;
  readonly dy: number;
  readonly radius: number;
  /** Accumulated angle in degrees, counter-clockwise positive. */
  readonly angle: number;
}
