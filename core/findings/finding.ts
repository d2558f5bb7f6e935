/** A judgement: a measure, the limit it is held against, what speaks for and against it, likely causes, what to do next. */
import type { StickId } from '../pad/stick.ts';
import type { CountRun } from '../measure/travel-measure.ts';

export const findingIds = [
  'stale-mapping',
  'off-centre-part',
  'seat-not-flat',
  'turned-part',
  'skewed-part',
  'short-range',
  'clipped-sensor',
  'worn-track',
  'noisy-joint',
  'dead-axis',
  'swapped-axes',
  'inverted-axis',
  'loose-return',
  'overshoot',
  'layers-disagree',
  'inputs-fail',
  'disturbed-rest',
  'warming-up',
  'rest-not-measured',
  'rim-not-covered',
  'mapping-of-another-pad',
  'late-reports',
  'signal-lost',
  'slow-return',
  'axes-together',
  'drifting-rest',
  'two-rests',
  'odd-release',
  'unpushed-release',
  'uneven-reach',
  'hidden-rest',
  'several-surveys',
] as const;
export type FindingId = (typeof findingIds)[number];

export type Severity = 'note' | 'caution' | 'fault';
export type Decision = 'pass' | 'fail' | 'cannot say';
export type LimitFrom = 'published' | 'common practice' | 'workshop';
export const verdicts = ['keep', 'recalibrate', 'reseat', 'replace', 'undecided', 'not surveyed'] as const;
/** `not surveyed`: the pad has the stick, and the log holds nothing of it. */
export type Verdict = (typeof verdicts)[number];

/** Where in the views the evidence of a finding can be seen. */
export interface FindingShows {
  /** Directions, degrees. */
  readonly directions: readonly number[];
  /** Spans of the log, microseconds. */
  readonly spans: readonly { readonly startUs: number; readonly endUs: number }[];
  /** Stretches of raw counts of one axis. */
  readonly counts: readonly (CountRun & { readonly axis: 'x' | 'y' })[];
}

export interface Finding {
  readonly id: FindingId;
  readonly severity: Severity;
  /** Null where it is of the whole pad. */
  readonly stick: StickId | null;
  /** Null where it could not be measured. */
  readonly value: number | null;
  /** Expanded uncertainty of the value; null where it cannot be stated. */
  readonly u95: number | null;
  /** What value and limit are in: `share of full deflection`, `degrees`, `counts`, `share`, `ms`, `times`, `releases` … */
  readonly unit: string;
  readonly limit: number | null;
  readonly limitFrom: LimitFrom;
  readonly decision: Decision;
  /** What it is, with its numbers, in one plain sentence. */
  readonly says: string;
  readonly for: readonly string[];
  readonly against: readonly string[];
  /** Likeliest first. */
  readonly causes: readonly string[];
  /** The next step at the bench. */
  readonly next: string;
  readonly shows: FindingShows;
}
