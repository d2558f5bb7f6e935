/** One flick in the readings: from full tilt back to the rest. */
import { describeDwell, tiltOf } from '../capture/evidence/describe-dwell.ts';
import { indexAt } from '../capture/evidence/find-index.ts';
import { tiltBetween } from '../capture/evidence/main-rest.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import { farthestPast } from './farthest-past.ts';
import type { Release } from './flick-releases.ts';
import type { Pair } from '../pad/stick.ts';

export interface FlickReading {
  /** The last reading near full tilt. */
  readonly letGoUs: number;
  /** Raw counts of full tilt and of the farthest place on the other side of the rest. */
  readonly tilt: Pair;
  readonly far: Pair;
  /** Counts past the rest, along the line of the return. */
  readonly overshoot: number;
  readonly settlingUs: number;
}

/** Around the mark of a release: a hand lets go up to this long before it, and this long after; if not, later. */
const BEFORE_US = 400_000;
const AFTER_US = 250_000;
const ASKED_US = 3_000_000;
/** Full tilt and well back, as shares of the farthest tilt around the mark; what is less of the half range is no full tilt. */
const NEAR_FULL = 0.9;
const WELL_BACK = 0.5;
const LEAST_TILT = 0.4;
/** Where the stick comes to rest is seen in this stretch after it was let go. */
const REST_FROM_US = 450_000;
const REST_TO_US = 750_000;
/** A return told by fewer readings hides its peak. */
const LONGEST_GAP_US = 12_000;
/** From this share of the tilt on the stick is back, as far as it takes readings to tell. */
const HOME_SHARE = 0.05;
/** The way past the rest is looked for until so long after the stick settled. */
const PAST_US = 50_000;

/** Null where the stick was not let go from full tilt here, did not come back or settle, or was told of too rarely. */
export function readFlick(
  track: StickTrack,
  gaps: Track['gaps'],
  rest: Pair,
  band: Pair,
  { t: markUs, untilUs }: Release,
): FlickReading | null {
  const letGo =
    findLetGo(track, rest, markUs, Math.min(untilUs, markUs + AFTER_US)) ??
    findLetGo(track, rest, markUs, Math.min(untilUs, markUs + ASKED_US));
  if (letGo === null) return null;
  const { t } = track;
  const letGoUs = t[letGo] ?? Number.NaN;
  const endUs = Math.min(untilUs, letGoUs + REST_TO_US);
  if (endUs <= letGoUs + REST_FROM_US) return null;
  const home = describeDwell(track, { startUs: letGoUs + REST_FROM_US, endUs }).point;
  const end = indexAt(t, endUs);
  let last = letGo;
  for (let i = letGo; i < end; i += 1) if (!isIn(track, i, home, band)) last = i;
  const settledUs = t[last + 1] ?? Number.NaN;
  if (!(settledUs - letGoUs < REST_FROM_US) || !isToldOf(track, gaps, rest, letGo, settledUs)) return null;
  const tilt = { x: track.x[letGo] ?? Number.NaN, y: track.y[letGo] ?? Number.NaN };
  const until = Math.min(end, indexAt(t, settledUs + PAST_US));
  return { letGoUs, tilt, ...farthestPast(track, rest, tilt, letGo, until), settlingUs: settledUs - letGoUs };
}

/** Index of the last reading near full tilt before the stick is well back. */
function findLetGo(track: StickTrack, rest: Pair, markUs: number, untilUs: number): number | null {
  const { x, y, fields } = track;
  const tiltAt = (i: number): number => tiltBetween(fields, rest, { x: x[i] ?? Number.NaN, y: y[i] ?? Number.NaN });
  const first = indexAt(track.t, markUs - BEFORE_US);
  const end = indexAt(track.t, untilUs);
  let peak = LEAST_TILT;
  for (let i = first; i < end; i += 1) peak = Math.max(peak, tiltAt(i));
  let near: number | null = null;
  for (let i = first; i < end; i += 1) {
    const away = tiltAt(i);
    if (away >= NEAR_FULL * peak) near = i;
    else if (near !== null && away < WELL_BACK * peak) return near;
  }
  return null;
}

/** No reports were lost, and none is missing on the way back: once there, a pad that reports only changes may be silent. */
function isToldOf(track: StickTrack, gaps: Track['gaps'], rest: Pair, letGo: number, settledUs: number): boolean {
  const { t, x, y, fields } = track;
  if (gaps.some((gap) => gap.t >= (t[letGo] ?? 0) && gap.t <= settledUs)) return false;
  const away = { x: (x[letGo] ?? 0) - rest.x, y: (y[letGo] ?? 0) - rest.y };
  for (let i = letGo; (t[i] ?? Number.POSITIVE_INFINITY) < settledUs; i += 1) {
    if ((t[i + 1] ?? Number.POSITIVE_INFINITY) - (t[i] ?? 0) > LONGEST_GAP_US) return false;
    const d = { x: (x[i + 1] ?? 0) - rest.x, y: (y[i + 1] ?? 0) - rest.y };
    if (d.x * away.x + d.y * away.y <= 0 || tiltOf(fields, d) < HOME_SHARE * tiltOf(fields, away)) return true;
  }
  return true;
}

function isIn({ x, y }: StickTrack, i: number, home: Pair, band: Pair): boolean {
  return Math.abs((x[i] ?? 0) - home.x) <= band.x && Math.abs((y[i] ?? 0) - home.y) <= band.y;
}
