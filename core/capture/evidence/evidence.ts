/**
 * What the captures of one stick prove, whatever the mapping: everything in raw counts as reported.
 * Small (some hundred numbers), so that it crosses to the screen and every measure, prediction and zone answer is
 * computed from it again within a frame when a mapping or a zone changes.
 */
import type { Pair, StickFields } from '../../pad/stick.ts';
import type { Problem } from '../../result.ts';

/** One release that settled and was dwelt on. */
export interface Dwell {
  readonly startUs: number;
  readonly endUs: number;
  /** Time-weighted mean. */
  readonly point: Pair;
  /** Reports in the dwell; noise is null below 20. */
  readonly reports: number;
  /** Variance within the dwell in counts², per axis; null below 20 reports. */
  readonly variance: Pair | null;
  readonly least: Pair;
  readonly greatest: Pair;
  /** Where the stick came from: unit vector y up from the rest to the tilt before the release; null when not known. */
  readonly from: Pair | null;
  /** Every distinct reading of the dwell, x and y in turn. */
  readonly readings: readonly number[];
}

export interface RestEvidence {
  readonly dwells: readonly Dwell[];
  /** One or two of many that came to rest far from all others, each with its number among all from 1: left out of `dwells`. */
  readonly odd?: readonly { readonly number: number; readonly dwell: Dwell }[];
  /** Those that came after no push, likewise. */
  readonly unpushed?: readonly { readonly number: number; readonly dwell: Dwell }[];
}

/** One turn of ±360° along the gate. */
export interface Turn {
  readonly way: 'clockwise' | 'counterClockwise';
  readonly startUs: number;
  readonly endUs: number;
  /** Rim point of each of the 72 directions in counts from the mean rest, y up; null where the turn has no reading there. */
  readonly points: readonly (Pair | null)[];
  /** Raw counts as reported, after the running median. */
  readonly extremes: { readonly xMin: number; readonly xMax: number; readonly yMin: number; readonly yMax: number };
}

/** Circles, ellipse and roundness of all rim readings, in counts; null where they cannot be stated. */
export interface RimShape {
  readonly circle: { readonly x: number; readonly y: number; readonly radius: number } | null;
  readonly ellipse: {
    readonly x: number;
    readonly y: number;
    readonly a: number;
    readonly b: number;
    /** Of the major axis, degrees counter-clockwise from +x, [0, 180). */
    readonly angle: number;
  } | null;
  readonly roundness: {
    readonly leastSquares: number;
    readonly minimumZone: number;
    readonly minimumCircumscribed: number;
    readonly maximumInscribed: number;
  } | null;
}

export interface RimEvidence {
  /** The point that directions are taken about: mean rest, or the middle of the extents where there is no rest capture. */
  readonly about: Pair;
  readonly turns: readonly Turn[];
  /** Ways along the gate that were no whole turn: what they passed counts for its directions, their extremes for nothing. */
  readonly parts?: readonly Turn[];
  readonly shape: RimShape;
  /** A gate trace for drawing, x and y in turn, raw counts as reported, thinned so that no corner is lost. */
  readonly trace: readonly number[];
}

export interface StickEvidence {
  readonly fields: StickFields;
  readonly rest: RestEvidence | null;
  readonly rim: RimEvidence | null;
  readonly captures: 'marked' | 'inferred';
  /** The effective step of the counts over all readings of the log; 1 where it is not stated. */
  readonly step?: Pair;
  /**
   * Still stretches at the rest that follow no release, in a log without capture marks (it begins at rest, or nobody
   * touched the stick): they say where it stood, and count as no release.
   */
  readonly still?: readonly Dwell[];
  /** Releases that a statement on the scatter of the rest takes on this bench; `LEAST_RELEASES` where it is not stated. */
  readonly releasesNeeded?: number;
  /** Why rest or rim is null, and what to do: one sentence each. */
  readonly lacks?: readonly Problem[];
}
