/** Whether the stick went where it was asked to go: tells axes that are exchanged or run backwards. */
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
}

/** A push is told from the rest by this share of the largest one. */
const PUSH_SHARE = 0.5;
const LEAST_PROMPTS = 6;

/**
 * From the marks `toward` of a stick: between one and the next mark of that name or end of a capture, the farthest reading of
 * the last push. Null with fewer than six prompts that were followed by a push. `rest` is in raw counts.
 */
export function promptedWays(track: Track, stick: StickId, rest: Pair): PromptedWays | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const followed = spansOf(track.marks, stick).flatMap(({ angle, startUs, endUs }) => {
    const went = lastPush(readings, rest, startUs, endUs);
    const turn = (angle * Math.PI) / 180;
    return went === null ? [] : [{ asked: { x: Math.cos(turn), y: Math.sin(turn) }, went }];
  });
  if (followed.length < LEAST_PROMPTS) return null;
  const scores = wirings.map((wiring) => ({ wiring, agreement: agreementOf(followed, wiring) }));
  const [best] = scores.toSorted((a, b) => b.agreement - a.agreement);
  if (best === undefined) return null;
  const astray = followed.filter(({ asked, went }) => asked.x * went.x + asked.y * went.y < Math.SQRT1_2).length;
  return { prompts: followed.length, astray: astray / followed.length, ...best };
}

function agreementOf(followed: readonly Followed[], wiring: Wiring): number {
  const [xx, xy, yx, yy] = MATRICES[wiring];
  const cosines = followed.map(
    ({ asked, went }) => went.x * (xx * asked.x + xy * asked.y) + went.y * (yx * asked.x + yy * asked.y),
  );
  return cosines.reduce((sum, one) => sum + one, 0) / cosines.length;
}

function spansOf(marks: readonly Mark[], stick: StickId): { angle: number; startUs: number; endUs: number }[] {
  const own = marks.filter(
    ({ name, detail }) => (name === 'toward' || name === 'capture') && (detail['stick'] ?? stick) === stick,
  );
  return own.flatMap(({ name, t, detail }, i) => {
    const { angle } = detail;
    const next = own[i + 1];
    if (name !== 'toward' || typeof angle !== 'number' || next === undefined) return [];
    return [{ angle, startUs: t, endUs: next.t }];
  });
}

/** Unit vector, y up, to the farthest reading of the last push in a span; null where there was none. */
function lastPush(readings: StickTrack, rest: Pair, startUs: number, endUs: number): Pair | null {
  const { t, x, y, fields } = readings;
  const half = { x: (fields.x.maximum - fields.x.minimum) / 2, y: (fields.y.maximum - fields.y.minimum) / 2 };
  const places: (Pair & { readonly size: number })[] = [];
  for (let i = firstAt(t, startUs); i < t.length && (t[i] ?? 0) < endUs; i += 1) {
    const dx = (fields.x.up * ((x[i] ?? Number.NaN) - rest.x)) / half.x;
    const dy = (fields.y.up * ((y[i] ?? Number.NaN) - rest.y)) / half.y;
    places.push({ x: dx, y: dy, size: Math.sqrt(dx * dx + dy * dy) });
  }
  const most = places.reduce((largest, { size }) => Math.max(largest, size), 0);
  const floor = Math.max(0.1, PUSH_SHARE * most);
  const last = places.findLastIndex(({ size }) => size >= floor);
  if (last < 0) return null;
  let far = places[last];
  for (let i = last; i >= 0 && (places[i]?.size ?? 0) >= floor; i -= 1)
    if (far === undefined || (places[i]?.size ?? 0) > far.size) far = places[i];
  return far === undefined ? null : { x: far.x / far.size, y: far.y / far.size };
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
