/** Measures how far a disturbance moves the rest. */
import {
  markedDwells,
  markedSpans,
  marksOf,
  repeatsOf,
  withoutRepeated,
  type MarkedSpan,
} from '../capture/evidence/capture-marks.ts';
import { describeDwell, TILT_SHARE } from '../capture/evidence/describe-dwell.ts';
import type { Dwell, StickEvidence } from '../capture/evidence/evidence.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import { tiltBetween } from '../capture/evidence/main-rest.ts';
import { findStillSpans, type StillSpan } from '../capture/evidence/still-spans.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import { combineUncertainty } from '../numeric/combined-uncertainty.ts';
import { studentT } from '../numeric/student-t.ts';
import { variance } from '../numeric/variance.ts';
import type { Pair, StickId } from '../pad/stick.ts';
import type { DisturbanceMeasure } from './disturbance-measure.ts';
import { findHeldStills, type Disturbed } from './held-stills.ts';
import { meanRest, settledDwells } from './mean-rest.ts';

/**
 * Over captures taken for a disturbance: mean of the dwells in it less the mean rest of the releases, y up, in counts. The
 * dwells are those marked, else the settled stretches near the rest, for a click those with a button down. In a log without
 * capture marks: stretches in which the stick lies still at its rest while a button is held, if it is its own or the shift is
 * beyond U. U at 95 % by Welch over the dwells, a count step's q/√12 to either side; a single disturbed dwell is taken to
 * scatter like the releases; null with a single undisturbed one. Null where nothing was disturbed or nothing undisturbed is known.
 * Source: B. L. Welch, Biometrika 34 (1947); the project's definitions.
 */
export function measureDisturbance(
  track: Track,
  stick: StickId,
  evidence: StickEvidence,
): readonly DisturbanceMeasure[] | null {
  const readings = track.sticks[stick];
  const rest = settledDwells(evidence);
  if (readings === undefined || rest.length === 0) return null;
  const disturbed =
    evidence.captures === 'marked'
      ? markedDisturbances(track, stick, readings, meanRest(rest))
      : findHeldStills(track, stick, readings, meanRest(rest));
  const step = evidence.step ?? { x: 1, y: 1 };
  const all = disturbed.flatMap(({ of, dwells, startUs, endUs }) =>
    dwells.length === 0 ? [] : [{ of, ...compare(readings, dwells, rest, step), startUs, endUs }],
  );
  const measures = evidence.captures === 'marked' ? all : all.filter(isTold);
  return measures.length === 0 ? null : measures;
}

/** A button that nobody asked for says something only where it is the stick's own, or the rest is surely another one. */
function isTold({ of, shift, u95 }: DisturbanceMeasure): boolean {
  return of === 'click' || (u95 !== null && (Math.abs(shift.x) > u95.x || Math.abs(shift.y) > u95.y));
}

function markedDisturbances(track: Track, stick: StickId, readings: StickTrack, rest: Pair): Disturbed[] {
  const marks = marksOf(track.marks, stick);
  return markedSpans(track.marks, stick, lastUs(track)).flatMap((span) => {
    if (span.purpose !== 'disturbance') return [];
    const begin = marks.find(
      ({ name, t, detail }) => name === 'capture' && t === span.startUs && detail['edge'] !== 'end',
    );
    const said = begin?.detail['of'];
    const of = typeof said === 'string' && said !== '' ? said : 'not said';
    const marked = markedDwells(marks, span);
    const stills = marked.length > 0 ? marked : stillsIn(track, readings, span, of);
    const dwells = withoutRepeated(stills, repeatsOf(marks, 'release', span), ({ endUs }) => endUs)
      .map((still) => describeDwell(readings, still))
      .filter(({ point }) => tiltBetween(readings.fields, rest, point) < TILT_SHARE || marked.length > 0)
      .filter(({ point }) => !Number.isNaN(point.x));
    return [{ of, dwells, startUs: span.startUs, endUs: span.endUs }];
  });
}

/** Of a click only what lies still while a button is down counts; else only what does with none. */
function stillsIn({ gaps }: Track, readings: StickTrack, span: MarkedSpan, of: string): StillSpan[] {
  const { buttonDown } = readings;
  const looked = of === 'click' ? { ...readings, buttonDown: buttonDown.map((down) => 1 - down) } : readings;
  return findStillSpans(looked, span.startUs, span.endUs, gaps);
}

function compare(
  { fields }: StickTrack,
  disturbed: readonly Dwell[],
  rest: readonly Dwell[],
  step: Pair,
): Pick<DisturbanceMeasure, 'shift' | 'u95'> {
  const [from, to] = [meanRest(rest), meanRest(disturbed)];
  const shift = { x: fields.x.up * (to.x - from.x), y: fields.y.up * (to.y - from.y) };
  if (rest.length < 2) return { shift, u95: null };
  return { shift, u95: { x: welch95(disturbed, rest, step, 'x'), y: welch95(disturbed, rest, step, 'y') } };
}

/** t(0.975, ν)·√(s₁²/n₁ + s₂²/n₂ + 2q²/12), ν by Welch and Satterthwaite. */
function welch95(disturbed: readonly Dwell[], rest: readonly Dwell[], step: Pair, axis: keyof Pair): number {
  const spread = (dwells: readonly Dwell[]): number => variance(dwells.map(({ point }) => point[axis]));
  const own = spread(rest);
  const isSingle = disturbed.length < 2;
  const combined = combineUncertainty([
    { value: Math.sqrt(own / rest.length), degrees: rest.length - 1 },
    {
      value: Math.sqrt((isSingle ? own : spread(disturbed)) / disturbed.length),
      degrees: (isSingle ? rest : disturbed).length - 1,
    },
    { value: step[axis] / Math.sqrt(6), degrees: Number.POSITIVE_INFINITY },
  ]);
  return studentT(0.975, combined.degrees) * combined.value;
}
