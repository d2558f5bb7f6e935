/** One flick in the readings: from full tilt back to the rest. */
import { indexAt } from '../capture/find-index.ts';
import type { StickTrack } from '../capture/track.ts';
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

/** Around the mark of a release: a hand lets go up to this long before it, and takes this long to be seen. */
const BEFORE_US = 400_000;
const AFTER_US = 250_000;
/** Full tilt and well back, as shares of the farthest tilt around the mark. */
const NEAR_FULL = 0.9;
const WELL_BACK = 0.5;
/** Where the stick comes to rest is seen in this stretch after it was let go. */
const REST_FROM_US = 450_000;
const REST_TO_US = 750_000;
/** A return told by fewer readings hides its peak. */
const LONGEST_GAP_US = 12_000;

/** Null where the stick was not let go from a tilt here, did not come back or settle, or was told of too rarely. */
export function readFlick(
  track: StickTrack,
  rest: Pair,
  band: Pair,
  markUs: number,
  untilUs: number,
): FlickReading | null {
  const letGo = findLetGo(track, rest, markUs);
  if (letGo === null) return null;
  const { t } = track;
  const letGoUs = t[letGo] ?? Number.NaN;
  const end = indexAt(t, Math.min(untilUs, letGoUs + REST_TO_US));
  const home = homeOf(track, letGoUs + REST_FROM_US, Math.min(untilUs, letGoUs + REST_TO_US));
  if (home === null) return null;
  let last = letGo;
  for (let i = letGo; i < end; i += 1) if (!isIn(track, i, home, band)) last = i;
  const settledUs = t[last + 1] ?? Number.NaN;
  if (!(settledUs - letGoUs < REST_FROM_US)) return null;
  for (let i = letGo; i <= last; i += 1) if ((t[i + 1] ?? 0) - (t[i] ?? 0) > LONGEST_GAP_US) return null;
  const tilt = { x: track.x[letGo] ?? Number.NaN, y: track.y[letGo] ?? Number.NaN };
  return { letGoUs, tilt, ...farthest(track, rest, tilt, letGo, end), settlingUs: settledUs - letGoUs };
}

/** Index of the last reading near full tilt before the stick is well back. */
function findLetGo(track: StickTrack, rest: Pair, markUs: number): number | null {
  const first = indexAt(track.t, markUs - BEFORE_US);
  const end = indexAt(track.t, markUs + AFTER_US);
  let peak = 0;
  for (let i = first; i < end; i += 1) peak = Math.max(peak, distance(track, i, rest));
  let near: number | null = null;
  for (let i = first; i < end; i += 1) {
    const away = distance(track, i, rest);
    if (away >= NEAR_FULL * peak) near = i;
    else if (near !== null && away < WELL_BACK * peak) return near;
  }
  return null;
}

function distance({ x, y }: StickTrack, i: number, from: Pair): number {
  return Math.hypot((x[i] ?? Number.NaN) - from.x, (y[i] ?? Number.NaN) - from.y);
}

/** Mean of the readings held in a stretch; a pad that reports only changes holds its last one. */
function homeOf({ t, x, y }: StickTrack, fromUs: number, toUs: number): Pair | null {
  if (toUs <= fromUs) return null;
  const end = indexAt(t, toUs);
  const first = Math.min(indexAt(t, fromUs), end - 1);
  if (first < 0) return null;
  const sum = { x: 0, y: 0 };
  for (let i = first; i < end; i += 1) {
    sum.x += x[i] ?? Number.NaN;
    sum.y += y[i] ?? Number.NaN;
  }
  return { x: sum.x / (end - first), y: sum.y / (end - first) };
}

function isIn({ x, y }: StickTrack, i: number, home: Pair, band: Pair): boolean {
  return Math.abs((x[i] ?? 0) - home.x) <= band.x && Math.abs((y[i] ?? 0) - home.y) <= band.y;
}

/** The median of three lets no single reading be the peak. */
function farthest(track: StickTrack, rest: Pair, tilt: Pair, from: number, end: number) {
  const way = { x: tilt.x - rest.x, y: tilt.y - rest.y };
  const length = Math.hypot(way.x, way.y);
  const along = (i: number): number =>
    (((track.x[i] ?? Number.NaN) - rest.x) * way.x + ((track.y[i] ?? Number.NaN) - rest.y) * way.y) / length;
  let best = { overshoot: 0, far: rest };
  for (let i = from + 1; i + 1 < end; i += 1) {
    const [low, here, high] = [along(i - 1), along(i), along(i + 1)].sort((a, b) => a - b) as [number, number, number];
    if (-here <= best.overshoot || !(low <= high)) continue;
    best = { overshoot: -here, far: { x: rest.x + (here * way.x) / length, y: rest.y + (here * way.y) / length } };
  }
  return best;
}
