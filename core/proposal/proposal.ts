/** A mapping the program suggests for a stated aim, with the reason for each number and the predicted measures. */
import type { RestMeasure } from '../measure/rest-measure.ts';
import type { RimMeasure } from '../measure/rim-measure.ts';
import type { LayerLimits } from '../mapping/layer-limits.ts';
import type { StickMapping } from '../mapping/mapping.ts';

export type Aim = 'full-reach' | 'even' | 'edges';
export type CentreBy = 'steadiest' | 'mean';

export interface Reason {
  /** Which number, e.g. `x.max`. */
  readonly of: string;
  readonly says: string;
  /** Expanded uncertainty at 95 % in counts; null where it cannot be stated. */
  readonly u95: number | null;
  /** What the number becomes when any one turn is left out, where there are too few turns for an uncertainty. */
  readonly leaveOneOut: { readonly least: number; readonly greatest: number } | null;
}

export interface Prediction {
  readonly rest: RestMeasure | null;
  readonly rim: RimMeasure | null;
}

export interface Proposal {
  readonly mapping: StickMapping;
  readonly aim: Aim;
  readonly centreBy: CentreBy;
  readonly guard: number;
  readonly predicted: Prediction;
  readonly current: Prediction;
  readonly reasons: readonly Reason[];
}

export interface ProposalWish {
  readonly aim: Aim;
  readonly centreBy: CentreBy;
  /** Set value of the guard; the larger of it and twice the pooled spread is used. */
  readonly guard: number;
  /** Degrees: `full-reach` is refused while a wider stretch is not covered, as it promises what it cannot see there. */
  readonly widestGap: number;
  readonly current: StickMapping;
  readonly limits: LayerLimits;
  readonly seed: number;
}
