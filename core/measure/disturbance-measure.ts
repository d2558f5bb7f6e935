/** Rest under one disturbance against the undisturbed rest, as `measure` prints it. Counts, y up. */
import type { Pair } from '../pad/stick.ts';

export interface DisturbanceMeasure {
  /** What was done: `rumble`, `other-stick`, `click`, `charger`, `shell`, or what the mark says. */
  readonly of: string;
  readonly shift: Pair;
  /** Null where there are too few readings to state it. */
  readonly u95: Pair | null;
  /** The stretch of the log that was disturbed, microseconds. */
  readonly startUs: number;
  readonly endUs: number;
}
