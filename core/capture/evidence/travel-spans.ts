/** Finds the readings that tell of a stick's travel. */
import type { Pair, StickId } from '../../pad/stick.ts';
import { markedSpans, marksOf, repeatsOf, withoutRepeated, type MarkedSpan } from './capture-marks.ts';
import { lastUs } from './find-captures.ts';
import { findSweep, type Sweep } from './find-sweep.ts';
import type { StickTrack, Track } from './track.ts';
import { unbrokenStretches, type Stretch } from './unbroken-stretches.ts';

export interface TravelSpans {
  /** `travel` from captures taken for it; else the turns of a rim capture, or the whole of a log without captures. */
  readonly from: 'travel' | 'rim' | 'log';
  /** Readings in which the axis travels. */
  readonly x: readonly Stretch[];
  readonly y: readonly Stretch[];
  readonly sweeps: readonly Sweep[];
}

/**
 * From travel captures each stretch between two `toward` marks counts for the axis that moves most in it; without such
 * marks every reading counts for both. `about` is the mean rest. Null where the log holds no such readings.
 */
export function findTravelSpans(track: Track, stick: StickId, about: Pair, marked: boolean): TravelSpans | null {
  const readings = track.sticks[stick];
  if (readings === undefined || readings.t.length === 0) return null;
  const endUs = lastUs(track);
  const spans = marked
    ? markedSpans(track.marks, stick, endUs)
    : [{ purpose: 'rim' as const, startUs: 0, endUs: Number.POSITIVE_INFINITY }];
  const unbroken = (span: MarkedSpan): Stretch[] => unbrokenStretches(readings, span.startUs, span.endUs, track.gaps);
  const travels = spans.filter(({ purpose }) => purpose === 'travel');
  const prompts = travels.flatMap((span) => promptsIn(track, stick, span));
  if (prompts.length > 0) return fromPrompts(track, readings, prompts, about);
  const used = travels.length > 0 ? travels : spans.filter(({ purpose }) => purpose === 'rim');
  const stretches = used.flatMap(unbroken);
  if (stretches.length === 0) return null;
  const from = travels.length > 0 ? 'travel' : marked ? 'rim' : 'log';
  return { from, x: stretches, y: stretches, sweeps: [] };
}

interface Prompt {
  readonly angle: number;
  readonly startUs: number;
  readonly endUs: number;
}

/** From each `toward` mark to the next mark of a sweep, or to the end of the capture; `repeat` drops the last one. */
function promptsIn(track: Track, stick: StickId, span: MarkedSpan): Prompt[] {
  const marks = marksOf(track.marks, stick).filter(({ t }) => t >= span.startUs && t <= span.endUs);
  const repeats = repeatsOf(marks, 'sweep', span);
  const towards = marks.filter(({ name, detail }) => name === 'toward' && typeof detail['angle'] === 'number');
  const ends = [...towards.map(({ t }) => t), ...repeats, span.endUs].sort((one, other) => one - other);
  const prompts = towards.map(({ t, detail }) => ({
    angle: detail['angle'] as number,
    startUs: t,
    endUs: ends.find((end) => end > t) ?? span.endUs,
  }));
  return withoutRepeated(prompts, repeats, ({ startUs }) => startUs);
}

function fromPrompts(track: Track, readings: StickTrack, prompts: readonly Prompt[], about: Pair): TravelSpans {
  const x: Stretch[] = [];
  const y: Stretch[] = [];
  const sweeps: Sweep[] = [];
  for (const { angle, startUs, endUs } of prompts)
    for (const stretch of unbrokenStretches(readings, startUs, endUs, track.gaps)) {
      const sweep = findSweep(readings, stretch, about, angle);
      if (sweep === null) continue;
      sweeps.push(sweep);
      (sweep.along === 'x' ? x : y).push(stretch);
    }
  return { from: 'travel', x, y, sweeps };
}
