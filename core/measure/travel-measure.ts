/** Travel of one stick, as `measure` prints it: what slow sweeps along an axis show of its counts. Counts as reported. */

/** A stretch of counts, both ends included. */
export interface CountRun {
  readonly from: number;
  readonly to: number;
}

/** What cannot be told from the readings there are is null. */
export interface AxisTravel {
  readonly min: number;
  readonly max: number;
  /** Counts that never occur inside the travelled range where their neighbours are well visited; null where nowhere are enough visits. */
  readonly missing: number | null;
  /** Missing counts side by side at most. */
  readonly longestRun: number | null;
  /** The runs of missing counts, longest first: a worn track. */
  readonly runs: readonly CountRun[];
  /** Share of the travelled counts whose neighbours are visited often enough to tell a missing one. */
  readonly judgedShare: number;
  /** Single readings that leap and come back; null where reports come unevenly, as on change: a leap is then a push between two. */
  readonly jumps: number | null;
  /** Where the jumps stand, as counts, in order of time; at most a hundred. */
  readonly jumpsAt: readonly number[];
  /** Readings that go against the sweep by more than noise explains, as a share of those in sweeps; null without sweeps. */
  readonly backwards: number | null;
  /** Places where more sweeps go back than chance would have it, longest first; null with fewer than three sweeps. */
  readonly backwardsAt: readonly (CountRun & { readonly sweeps: number })[] | null;
  /** Counts where the reading is unsteadier than elsewhere on the axis, with how many times as unsteady. */
  readonly unsteady: readonly (CountRun & { readonly times: number })[] | null;
  /** The effective step: 1 unless the readings show a comb; a broken number where the firmware spreads fewer levels over the counts. */
  readonly step: number;
}

export interface TravelMeasure {
  readonly sweeps: number;
  readonly x: AxisTravel | null;
  readonly y: AxisTravel | null;
  /** Degrees counter-clockwise that the part is turned against the prompted directions; null without prompts along both axes. */
  readonly turnAngle: number | null;
  /** Expanded uncertainty of the turn, degrees, the hand's own aim included. */
  readonly turnU95: number | null;
  /** Of y's own direction less that of x less 90°, degrees: the axes as prompted are not square. */
  readonly skewAngle: number | null;
  /** Expanded uncertainty of the skew, degrees. */
  readonly skewU95: number | null;
  /**
   * Where sweeps prompted toward 0° (x) and 90° (y) are seen to go, degrees [0, 360). Near 90 or 270 for x the axes are
   * swapped; near 180 for x, or 270 for y, the axis is inverted.
   */
  readonly seenAngle: { readonly x: number | null; readonly y: number | null };
}
