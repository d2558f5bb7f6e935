/** Measures how far a disturbance moves the rest. */
import { markedDwells, markedSpans, marksOf } from '../capture/capture-marks.ts';
import { describeDwell } from '../capture/describe-dwell.ts';
import type { Dwell, StickEvidence } from '../capture/evidence.ts';
import { lastUs } from '../capture/find-captures.ts';
import { findStillSpans } from '../capture/still-spans.ts';
import type { StickTrack, Track } from '../capture/track.ts';
import { studentT } from '../numeric/student-t.ts';
import { variance } from '../numeric/variance.ts';
import type { Pair, StickId } from '../pad/stick.ts';
import type { DisturbanceMeasure } from './disturbance-measure.ts';
import { findHeldStills } from './held-stills.ts';
import { meanRest, settledDwells } from './mean-rest.ts';

/**
 * Over captures taken for a disturbance: mean of the dwells in it less the mean rest of the releases, y up, in counts. The
 * dwells are those marked, else the settled stretches. In a log without capture marks: stretches in which the stick lies still
 * at its rest while a button is held. U at 95 % by Welch over the dwells; a single disturbed dwell is taken to scatter like the
 * releases. Null where nothing was disturbed or nothing undisturbed is known.
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
      ? markedDisturbances(track, stick, readings)
      : findHeldStills(track, stick, readings, meanRest(rest));
  const measures = disturbed.flatMap(({ of, dwells, startUs, endUs }) =>
    dwells.length === 0 ? [] : [{ of, ...compare(readings, dwells, rest), startUs, endUs }],
  );
  return measures.length === 0 ? null : measures;
}

export interface Disturbed {
  readonly of: string;
  readonly dwells: readonly Dwell[];
  readonly startUs: number;
  readonly endUs: number;
}

function markedDisturbances(track: Track, stick: StickId, readings: StickTrack): Disturbed[] {
  const marks = marksOf(track.marks, stick);
  return markedSpans(track.marks, stick, lastUs(track)).flatMap((span) => {
    if (span.purpose !== 'disturbance') return [];
    const begin = marks.find(
      ({ name, t, detail }) => name === 'capture' && t === span.startUs && detail['purpose'] === 'disturbance',
    );
    const of = begin?.detail['of'];
    const marked = markedDwells(marks, span);
    const stills = marked.length > 0 ? marked : findStillSpans(readings, span.startUs, span.endUs, track.gaps);
    const dwells = stills.map((still) => describeDwell(readings, still)).filter(({ point }) => !Number.isNaN(point.x));
    const { startUs, endUs } = span;
    return [{ of: typeof of === 'string' && of !== '' ? of : 'not said', dwells, startUs, endUs }];
  });
}

function compare(
  { fields }: StickTrack,
  disturbed: readonly Dwell[],
  rest: readonly Dwell[],
): Pick<DisturbanceMeasure, 'shift' | 'u95'> {
  const [from, to] = [meanRest(rest), meanRest(disturbed)];
  const shift = { x: fields.x.up * (to.x - from.x), y: fields.y.up * (to.y - from.y) };
  if (rest.length < 2) return { shift, u95: null };
  return { shift, u95: { x: welch95(disturbed, rest, 'x'), y: welch95(disturbed, rest, 'y') } };
}

/** t(0.975, ν)·√(s₁²/n₁ + s₂²/n₂), ν by Welch and Satterthwaite. */
function welch95(disturbed: readonly Dwell[], rest: readonly Dwell[], axis: keyof Pair): number {
  const counts = (dwells: readonly Dwell[]): number[] => dwells.map(({ point }) => point[axis]);
  const own = variance(counts(rest));
  const ofRest = own / rest.length;
  const ofDisturbed = (disturbed.length < 2 ? own : variance(counts(disturbed))) / disturbed.length;
  const sum = ofRest + ofDisturbed;
  if (sum === 0) return 0;
  const disturbedDegrees = disturbed.length < 2 ? rest.length - 1 : disturbed.length - 1;
  const degrees = sum ** 2 / (ofRest ** 2 / (rest.length - 1) + ofDisturbed ** 2 / disturbedDegrees);
  return studentT(0.975, degrees) * Math.sqrt(sum);
}
