/** Rim of one stick, as `measure` prints it. */

export type Coverage = 'covered' | 'thin' | 'none';

/** One of the 72 directions; counts y up from the mean rest point, null where there is no rim point. */
export interface DirectionMeasure {
  readonly angle: number;
  readonly x: number | null;
  readonly y: number | null;
  /** Magnitude of the free deflection. */
  readonly reach: number | null;
  /** Magnitude of the limited deflection, what a host gets. */
  readonly seen: number | null;
  readonly outputAngle: number | null;
  /** Sample σ of the reach over turns; null with fewer than two. */
  readonly spread: number | null;
  readonly state: Coverage;
  readonly covered: boolean;
  /** A count of the rim point stands at a limit of its field: the reach is at least this. */
  readonly atLimit: boolean;
}

export interface RimMeasure {
  readonly turns: { readonly clockwise: number; readonly counterClockwise: number };
  readonly directions: readonly DirectionMeasure[];
  readonly leastReach: { readonly value: number; readonly angle: number } | null;
  readonly overreach: { readonly value: number; readonly angle: number } | null;
  readonly meanRadialError: number | null;
  readonly rmsRadialError: number | null;
  readonly fullReachShare: number | null;
  /** Share of the covered directions whose reach is "at least", a count standing at its field's limit. */
  readonly atLimitShare: number | null;
  readonly pooledSpread: number | null;
  readonly pooledDegrees: number;
  readonly directionHysteresis: number | null;
  /**
   * Largest difference of two turns' reach, one each way, in one direction; and of turns one way. Shares of full deflection,
   * null while no direction is covered.
   */
  readonly turnErrors: { readonly hysteresis: number; readonly repeatability: number } | null;
  readonly headroom: {
    readonly xMin: number;
    readonly xMax: number;
    readonly yMin: number;
    readonly yMax: number;
  } | null;
  readonly circle: { readonly x: number; readonly y: number; readonly radius: number } | null;
  readonly ellipse: {
    readonly x: number;
    readonly y: number;
    readonly a: number;
    readonly b: number;
    readonly angle: number;
  } | null;
  /** Degrees from perpendicular axes. */
  readonly skew: number | null;
  readonly roundness: {
    readonly leastSquares: number;
    readonly minimumZone: number;
    readonly minimumCircumscribed: number;
    readonly maximumInscribed: number;
  } | null;
}
