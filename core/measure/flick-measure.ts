/** What a stick does when it is let go from full tilt, as `measure` prints it (FORMATS). Overshoot is a deflection. */
export interface FlickMeasure {
  readonly count: number;
  /** How far past the rest it comes out on the far side; `mean` over the flicks. */
  readonly overshoot: { readonly largest: number; readonly mean: number };
  /** The same in counts. */
  readonly overshootCounts: { readonly largest: number; readonly mean: number };
  /** From letting go until it stays at its rest. */
  readonly settlingUs: { readonly p50: number; readonly max: number };
  /** When each flick was let go, microseconds of the log. */
  readonly at: readonly number[];
}
