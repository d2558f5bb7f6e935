/** What a plane figure is drawn from. */
import type { Pair, StickFields } from '../pad/stick.ts';
import type { Tone } from './figure.ts';

/** Curves of one mapping in raw counts as reported, x and y in turn. */
export interface PlaneSeries {
  readonly tone: Tone;
  /** Where the deflection is exactly 1. */
  readonly unit: readonly number[];
  /** The edge inside which the zone gives no output; null without a zone. */
  readonly zone: readonly number[] | null;
  readonly centre: Pair;
}

export interface PlaneInput {
  readonly fields: StickFields;
  readonly series: readonly PlaneSeries[];
  /** Rest point of each release, raw counts as reported. */
  readonly rests: readonly Pair[];
  /** Gate trace, raw counts as reported, x and y in turn; null without a rim. */
  readonly trace: readonly number[] | null;
  /** Gate and rest points of another survey of the stick, to compare with; missing or null without one. */
  readonly before?: { readonly trace: readonly number[] | null; readonly rests: readonly Pair[] } | null;
  /** Series of a picture beside this one, which has the same scale. */
  readonly beside?: readonly PlaneSeries[];
  /** Point that directions are taken about. */
  readonly about: Pair;
}
