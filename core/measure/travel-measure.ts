/** Travel of one stick, as `measure` prints it (FORMATS): what slow sweeps along an axis show of its counts. Counts as reported. */

/** A stretch of counts, both ends included. */
export interface CountRun {
  readonly from: number;
  readonly to: number;
}

export interface AxisTravel {
  readonly min: number;
  readonly max: number;
  /** Counts that never occur inside the travelled range where their neighbours are well visited. */
  readonly missing: number;
  readonly longestRun: number;
  /** The runs of missing counts, longest first: a worn track. */
  readonly runs: readonly CountRun[];
  /** Single readings that leap and come back. */
  readonly jumps: number;
  /** Where the jumps stand, as counts, in order of time; at most a hundred. */
  readonly jumpsAt: readonly number[];
  /** Readings that go against the sweep by more than noise explains, as a share of those moving. */
  readonly backwards: number | null;
  /** Counts where the reading is unsteadier than elsewhere on the axis, with how many times as unsteady. */
  readonly unsteady: readonly (CountRun & { readonly times: number })[];
  /** The effective step: 1 unless the readings show a comb. */
  readonly step: number;
}

export interface TravelMeasure {
  readonly sweeps: number;
  readonly x: AxisTravel | null;
  readonly y: AxisTravel | null;
  /** Degrees counter-clockwise that the part is turned against the prompted directions; null without prompts. */
  readonly turnAngle: number | null;
  /** Expanded uncertainty of the turn, degrees, the hand's own aim included. */
  readonly turnU95: number | null;
  /** Of y's own direction less that of x less 90°, degrees: the axes as prompted are not square. */
  readonly skewAngle: number | null;
}
