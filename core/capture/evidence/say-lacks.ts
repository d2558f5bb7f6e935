/** Says why a log leaves a stick's rest or rim open, and what to do. */
import type { StickId } from '../../pad/stick.ts';
import type { Problem } from '../../result.ts';
import { marksOf } from './capture-marks.ts';
import type { Dwell, RimEvidence, StickEvidence, Turn } from './evidence.ts';
import { findCaptures } from './find-captures.ts';
import { LEAST_RELEASES } from './least-releases.ts';
import { sayNotWhole, sayUnreadReports } from './log-whole.ts';
import type { Track } from './track.ts';

type Found = Pick<StickEvidence, 'fields' | 'rest' | 'rim' | 'still'>;

/** A push moves a stick by more of its field's range, dither and a step of the rest by less. */
const LEAST_MOVE = 0.05;
/** A rest that wanders by less of the range does so in the hand, too. */
const LEAST_SHIFT = 0.01;

/** One sentence for each thing that cannot be stated, or that puts it in doubt. `found` is null without any reading. */
export function sayLacks(track: Track, stick: StickId, found: Found | null, needed: number): Problem[] {
  // Of a stick without any reading that is said by the stick's own sentence.
  const unread = found === null ? null : sayUnreadReports(track);
  return [...sayStickLacks(track, stick, found, needed), ...(unread === null ? [] : [unread]), ...sayNotWhole(track)];
}

function sayStickLacks(track: Track, stick: StickId, found: Found | null, needed: number): Problem[] {
  if (found === null) return [sayNoReadings(track, stick)];
  const shift = sayShift(stick, found);
  if (!wasPushed(track, stick))
    return [
      {
        code: 'stick-never-moved',
        says: `The ${stick} stick was never pushed in this log, so nothing can be said of its returns or its gate; record it again while it is pushed and let go, then turned along the gate.`,
      },
      ...shift,
    ];
  const lacks: Problem[] = [];
  if (found.rest === null)
    lacks.push({
      code: 'no-release',
      says: `${sayNoRelease(track, stick)}; push it, let it snap back and keep off it, at least ${sayCount(needed)} times.`,
    });
  if (found.rim === null)
    lacks.push({
      code: 'no-turn',
      says: `${sayNoTurn(track, stick)}; turn it slowly, three times each way.`,
    });
  else lacks.push(...sayPartTurns(stick, found.rim));
  return [...lacks, ...shift];
}

/** The usual number in a word, as a sentence has it. */
function sayCount(releases: number): string {
  return releases === LEAST_RELEASES ? 'twelve' : String(releases);
}

/** A way of so many degrees was meant for a turn. */
const MEANT = 270;

/** What of the turns was not as asked: none whole, or all of them one way. */
function sayPartTurns(stick: StickId, { turns, parts = [] }: RimEvidence): Problem[] {
  const ways = new Set([...turns, ...parts.filter(passesMost)].map(({ way }) => way));
  const [only] = ways;
  if (ways.size === 1 && only !== undefined) {
    const [is, other] = only === 'clockwise' ? ['clockwise', 'counter-clockwise'] : ['counter-clockwise', 'clockwise'];
    return [
      {
        code: 'turns-one-way',
        says: `All turns of the ${stick} stick go ${is}, so no direction is covered; turn it three times ${other}, too.`,
      },
    ];
  }
  if (turns.length > 0) return [];
  return [
    {
      code: 'no-whole-turn',
      says: `No way of the ${stick} stick along its gate goes once all round; what was passed counts, but turn on past where you began, three times each way.`,
    },
  ];
}

function passesMost({ points }: Turn): boolean {
  return 360 * points.filter((point) => point !== null).length >= MEANT * points.length;
}

/** In a log with capture marks only what a capture holds is looked at, and only that can be missed. */
function sayNoRelease(track: Track, stick: StickId): string {
  const { captures, from } = findCaptures(track, stick);
  const rests = captures.filter(({ purpose }) => purpose === 'rest');
  if (from === 'inferred') return `No release of the ${stick} stick settled for half a second in this log`;
  if (rests.length === 0) return `No rest of the ${stick} stick was captured in this log`;
  const isTold = marksOf(track.marks, stick).some(
    ({ name, t }) =>
      (name === 'release' || name === 'dwell') && rests.some(({ startUs, endUs }) => t >= startUs && t <= endUs),
  );
  return isTold
    ? `No release of the ${stick} stick settled for half a second in its rest capture`
    : `The rest capture of the ${stick} stick marks no release, so none is counted; record the rest again`;
}

function sayNoTurn(track: Track, stick: StickId): string {
  const { captures, from } = findCaptures(track, stick);
  if (from === 'inferred') return `No whole turn of the ${stick} stick along its gate is in this log`;
  return captures.some(({ purpose }) => purpose === 'rim')
    ? `No whole turn of the ${stick} stick along its gate is in its rim capture`
    : `No turn of the ${stick} stick along its gate was captured in this log`;
}

/** A rest that moved while nobody pushed the stick: touched, or loose. */
function sayShift(stick: StickId, { fields, still = [], rest }: Found): Problem[] {
  const pushed = (before: Dwell, after: Dwell): boolean =>
    rest?.dwells.some(({ startUs }) => startUs > before.endUs && startUs < after.startUs) ?? false;
  const moved = (before: Dwell, after: Dwell): boolean =>
    Math.abs(after.point.x - before.point.x) > LEAST_SHIFT * range(fields.x) ||
    Math.abs(after.point.y - before.point.y) > LEAST_SHIFT * range(fields.y);
  for (const [i, after] of still.entries()) {
    const before = still[i - 1];
    if (before === undefined || pushed(before, after) || !moved(before, after)) continue;
    return [
      {
        code: 'rest-shifted',
        says: `The ${stick} stick stood at ${sayPlace(before)} and later at ${sayPlace(after)} without a push between: it was touched, or it does not hold its place; record it again untouched.`,
      },
    ];
  }
  return [];
}

function sayPlace({ point }: Dwell): string {
  return `${Math.round(point.x)}, ${Math.round(point.y)}`;
}

function sayNoReadings(track: Track, stick: StickId): Problem {
  if (track.reportTimes.length === 0)
    return { code: 'log-without-reports', says: 'The log holds no reports; record it again with the pad connected.' };
  if (track.layout.sticks[stick] === undefined)
    return { code: 'no-stick', says: track.layout.noSticks ?? `The pad has no ${stick} stick.` };
  const first = track.unread?.first ?? null;
  if (first !== null) return { code: first.code, says: `No report of the ${stick} stick can be read: ${first.says}` };
  return {
    code: 'no-readings',
    says: `None of the log's reports carries the ${stick} stick; record it again after the pad's full reports were started.`,
  };
}

/** Dither and a step of the rest are no push. */
function wasPushed(track: Track, stick: StickId): boolean {
  const readings = track.sticks[stick];
  if (readings === undefined) return false;
  const { fields, x, y } = readings;
  return wander(x) > LEAST_MOVE * range(fields.x) || wander(y) > LEAST_MOVE * range(fields.y);
}

function range(field: { readonly minimum: number; readonly maximum: number }): number {
  return field.maximum - field.minimum;
}

function wander(values: Float64Array): number {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  return greatest - least;
}
