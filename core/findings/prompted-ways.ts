/** Whether the stick went where it was asked to go: tells axes that are exchanged or run backwards. */
import { mean } from '../numeric/mean.ts';
import { standardDeviation } from '../numeric/variance.ts';
import type { Mark } from '../log/visitor.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import type { Pair, StickId } from '../pad/stick.ts';

/** One prompt and where the stick really went, unit vectors, y up. */
interface Followed {
  readonly asked: Pair;
  readonly went: Pair;
}

export const wirings = [
  'as it should be',
  'x inverted',
  'y inverted',
  'both inverted',
  'swapped',
  'swapped, both inverted',
  'swapped, x inverted',
  'swapped, y inverted',
] as const;
export type Wiring = (typeof wirings)[number];

/** What comes out of a push (x, y) by each wiring. */
const MATRICES: Readonly<Record<Wiring, readonly [number, number, number, number]>> = {
  'as it should be': [1, 0, 0, 1],
  'x inverted': [-1, 0, 0, 1],
  'y inverted': [1, 0, 0, -1],
  'both inverted': [-1, 0, 0, -1],
  swapped: [0, 1, 1, 0],
  'swapped, both inverted': [0, -1, -1, 0],
  'swapped, x inverted': [0, -1, 1, 0],
  'swapped, y inverted': [0, 1, -1, 0],
};

export interface PromptedWays {
  readonly prompts: number;
  /** Share of the prompts after which the stick went elsewhere by more than 45°. */
  readonly astray: number;
  /** The wiring that explains best where it went, and the mean cosine between that and where it went. */
  readonly wiring: Wiring;
  readonly agreement: number;
  /** Degrees by which it went aside of what was asked under that wiring, counter-clockwise positive: the mean over the prompts, and U of it. */
  readonly turn: number;
  readonly turnU95: number;
}

/** A push is told from the rest by this share of the largest one. */
const PUSH_SHARE = 0.5;
/** Of the half range. */
const LEAST_PUSH = 0.1;
/** Of that: what a push must fall below to be over, so that its noise makes no second one. */
const OVER_SHARE = 0.8;
/** What lasts less is no push, and no return: a signal that leaps. */
const SHORTEST_US = 50_000;
/** Of the farthest reading of a push. */
const ENTRY_SHARE = 0.8;
const LEAST_PROMPTS = 6;

/**
 * From the marks `toward` of a stick: the push that followed each of them (see `followedPush`), up to the next mark of that
 * name or the end of the capture. Null with fewer than six prompts that were followed by a push. `rest` is in raw counts.
 */
export function promptedWays(track: Track, stick: StickId, rest: Pair): PromptedWays | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const followed = promptsOf(track.marks, stick).flatMap((prompt) => {
    const went = followedPush(readings, rest, prompt);
    const turn = (prompt.angle * Math.PI) / 180;
    return went === null ? [] : [{ asked: { x: Math.cos(turn), y: Math.sin(turn) }, went }];
  });
  if (followed.length < LEAST_PROMPTS) return null;
  const scores = wirings.map((wiring) => ({ wiring, agreement: agreementOf(followed, wiring) }));
  const [best] = scores.toSorted((a, b) => b.agreement - a.agreement);
  if (best === undefined) return null;
  const astray = followed.filter(({ asked, went }) => asked.x * went.x + asked.y * went.y < Math.SQRT1_2).length;
  return { prompts: followed.length, astray: astray / followed.length, ...best, ...turnOf(followed, best.wiring) };
}

/** Mean of the angles from asked to went; U = 2·s/√n. */
function turnOf(followed: readonly Followed[], wiring: Wiring): Pick<PromptedWays, 'turn' | 'turnU95'> {
  const [xx, xy, yx, yy] = MATRICES[wiring];
  const turns = followed.map(({ asked, went }) => {
    const x = xx * asked.x + xy * asked.y;
    const y = yx * asked.x + yy * asked.y;
    return (Math.atan2(x * went.y - y * went.x, x * went.x + y * went.y) * 180) / Math.PI;
  });
  return { turn: mean(turns), turnU95: (2 * standardDeviation(turns)) / Math.sqrt(turns.length) };
}

function agreementOf(followed: readonly Followed[], wiring: Wiring): number {
  const [xx, xy, yx, yy] = MATRICES[wiring];
  const cosines = followed.map(
    ({ asked, went }) => went.x * (xx * asked.x + xy * asked.y) + went.y * (yx * asked.x + yy * asked.y),
  );
  return cosines.reduce((sum, one) => sum + one, 0) / cosines.length;
}

interface Prompt {
  readonly angle: number;
  readonly startUs: number;
  readonly endUs: number;
  /** A sweep is marked where the stick stands at its start, across from where it is to go. */
  readonly isSweep: boolean;
}

function promptsOf(marks: readonly Mark[], stick: StickId): Prompt[] {
  const own = marks.filter(
    ({ name, detail }) => (name === 'toward' || name === 'capture') && (detail['stick'] ?? stick) === stick,
  );
  let isSweep = false;
  return own.flatMap(({ name, t, detail }, i) => {
    if (name === 'capture') isSweep = detail['edge'] === 'begin' && detail['purpose'] === 'travel';
    const { angle } = detail;
    const next = own[i + 1];
    if (name !== 'toward' || typeof angle !== 'number' || next === undefined) return [];
    return [{ angle, startUs: t, endUs: next.t, isSweep }];
  });
}

/** A reading from the rest, in half ranges of the fields, y up. */
interface Place extends Pair {
  readonly t: number;
  readonly size: number;
}

/** One stretch of readings away from the rest. */
interface Push {
  readonly far: Pair;
  /** Where it first came near as far out. */
  readonly entry: Pair;
  /** Under way when the prompt was marked. */
  readonly isBefore: boolean;
  /** Still under way at the end of the span: it may be the start of what is asked next. */
  readonly isAfter: boolean;
}

/**
 * Unit vector, y up, to the farthest reading of the push that answers a prompt; null where there was none. A stick that
 * stands out at the mark stands at the start of its sweep, and the next push is meant, where it comes in: from there the hand may go on along the gate to the start of the next sweep; of a release or a flick it is the push itself, whose mark
 * came late. Else it is the last one that ended in time, as a push that failed is done again, or the one under way.
 */
function followedPush(readings: StickTrack, rest: Pair, { startUs, endUs, isSweep }: Prompt): Pair | null {
  const pushes = pushesIn(readings, rest, startUs, endUs);
  const first = pushes.find(({ isBefore }) => isBefore);
  if (first !== undefined) return isSweep ? (pushes[1]?.entry ?? null) : first.far;
  return (pushes.findLast(({ isAfter }) => !isAfter) ?? pushes[0])?.far ?? null;
}

function pushesIn(readings: StickTrack, rest: Pair, startUs: number, endUs: number): Push[] {
  const { t, x, y, fields } = readings;
  const half = { x: (fields.x.maximum - fields.x.minimum) / 2, y: (fields.y.maximum - fields.y.minimum) / 2 };
  const places: Place[] = [];
  for (let i = firstAt(t, startUs); i < t.length && (t[i] ?? 0) < endUs; i += 1) {
    const dx = (fields.x.up * ((x[i] ?? Number.NaN) - rest.x)) / half.x;
    const dy = (fields.y.up * ((y[i] ?? Number.NaN) - rest.y)) / half.y;
    places.push({ t: t[i] ?? Number.NaN, x: dx, y: dy, size: Math.sqrt(dx * dx + dy * dy) });
  }
  const floor = Math.max(LEAST_PUSH, PUSH_SHARE * places.reduce((largest, { size }) => Math.max(largest, size), 0));
  const stretches: Place[][] = [];
  let wasOut = false;
  for (const place of places) {
    const last = stretches.at(-1);
    // A pad that reports only changes is silent while the stick stands out; only readings that fall back part two pushes.
    const isBriefly = place.t - (last?.at(-1)?.t ?? Number.NEGATIVE_INFINITY) <= SHORTEST_US;
    const isOut: boolean = place.size >= OVER_SHARE * floor && (wasOut || isBriefly || place.size >= floor);
    if (isOut && last !== undefined && (wasOut || isBriefly)) last.push(place);
    else if (place.size >= floor) stretches.push([place]);
    wasOut = isOut && stretches.at(-1)?.at(-1) === place;
  }
  return stretches.flatMap((stretch) => {
    const isBefore = stretch[0] === places[0];
    const isAfter = stretch.at(-1) === places.at(-1);
    const lasted = (stretch.at(-1)?.t ?? 0) - (stretch[0]?.t ?? 0);
    if (!isBefore && !isAfter && lasted < SHORTEST_US) return [];
    const far = stretch.reduce((most, place) => (place.size > most.size ? place : most));
    const entry = stretch.find((place) => place.size >= ENTRY_SHARE * far.size) ?? far;
    return [{ far: unit(far), entry: unit(entry), isBefore, isAfter }];
  });
}

function unit({ x, y, size }: Place): Pair {
  return { x: x / size, y: y / size };
}

/** Index of the first time not before another; times never decrease. */
function firstAt(t: Float64Array, startUs: number): number {
  let low = 0;
  let high = t.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((t[middle] ?? 0) < startUs) low = middle + 1;
    else high = middle;
  }
  return low;
}
