/** Two surveys of one stick side by side: a difference is called one only beyond what surveying alone explains. */
import type { StickReport } from './measure-report.ts';
import { differs, repeatabilityLimit, type StudiedMeasure } from './repeatability.ts';

export interface SurveyDifference {
  readonly measure: StudiedMeasure;
  readonly first: number | null;
  readonly second: number | null;
  /** By more than this two surveys of an unchanged stick differ in 5 % of the cases. */
  readonly limit: number;
  /** Null where either has no value. */
  readonly differs: boolean | null;
}

/** Counts are those as reported, shares and skew under each survey's own mapping. */
export function compareSurveys(first: StickReport, second: StickReport): SurveyDifference[] {
  const step = Math.max(stepOf(first), stepOf(second));
  return MEASURES.map(([measure, valueOf, isCounts, u95Of]) => {
    const [a, b] = [valueOf(first), valueOf(second)];
    const ofStep = isCounts ? step : step / halfOf(first);
    const [ua, ub] = [u95Of?.(first) ?? null, u95Of?.(second) ?? null];
    const own = ua === null || ub === null ? { step: ofStep } : { step: ofStep, u95: [ua, ub] as const };
    const limit = Math.max(repeatabilityLimit(measure, ofStep), ua === null || ub === null ? 0 : Math.hypot(ua, ub));
    return { measure, first: a, second: b, limit, differs: differs(measure, a, b, own) };
  });
}

type ValueOf = (report: StickReport) => number | null;

/** With whether it is in counts, and its own expanded uncertainty where it has one. */
const MEASURES: readonly (readonly [StudiedMeasure, ValueOf, boolean, ValueOf?])[] = [
  ['restX', ({ rest }) => rest?.point.x ?? null, true, ({ rest }) => rest?.u95.x ?? null],
  ['restY', ({ rest }) => rest?.point.y ?? null, true, ({ rest }) => rest?.u95.y ?? null],
  ['offset', ({ rest }) => rest?.offset.magnitude ?? null, false],
  ['toleranceRadius', ({ rest }) => rest?.toleranceRadius ?? null, false],
  ['leastReach', ({ rim }) => rim?.leastReach?.value ?? null, false],
  ['meanRadialError', ({ rim }) => rim?.meanRadialError ?? null, false],
  ['ellipseMajor', ({ rim }) => rim?.ellipse?.a ?? null, true],
  ['ellipseMinor', ({ rim }) => rim?.ellipse?.b ?? null, true],
  ['skew', ({ rim }) => rim?.skew ?? null, false],
  ['roundness', ({ rim }) => rim?.roundness?.minimumZone ?? null, true],
  ['circleX', ({ rim }) => rim?.circle?.x ?? null, true],
  ['circleY', ({ rim }) => rim?.circle?.y ?? null, true],
];

function stepOf({ rest }: StickReport): number {
  // One count is in the program's own repeatability already, of 12 bits; a wider step comes on top.
  const step = Math.max(rest?.step.x ?? 1, rest?.step.y ?? 1);
  return step > 1 ? step : 0;
}

function halfOf({ mapping }: StickReport): number {
  return (mapping.x.max - mapping.x.min) / 2;
}
