/** Drift of the rest after soldering, over dwells in order of time. Counts per second, y up. */
import type { Pair } from '../pad/stick.ts';

export interface WarmUpMeasure {
  readonly dwells: number;
  readonly drift: { readonly x: number; readonly y: number; readonly u95: Pair };
  /** False: the drift of the last stretch is significant, so wait. */
  readonly steady: boolean;
  /** Seconds from the first to the last dwell. */
  readonly seconds: number;
}
