/** Drift of the rest after soldering, over dwells in order of time. Counts per second, y up. */
import type { Pair } from '../pad/stick.ts';

interface Drift {
  readonly x: number;
  readonly y: number;
  /** Expanded uncertainty of the slopes at 95 %. */
  readonly u95: Pair;
}

export interface WarmUpMeasure {
  readonly dwells: number;
  readonly drift: Drift;
  /** Drift of the last stretch alone: the last third, eight dwells at least; null with fewer dwells. */
  readonly last: Drift | null;
  /** False: the drift of the last stretch is significant, so wait. Null: too few dwells to tell. */
  readonly steady: boolean | null;
  /** Seconds from the first to the last dwell. */
  readonly seconds: number;
}
