/** Counts of an axis that never occur where they should. */
import type { CountRun } from './travel-measure.ts';

export interface MissingCounts {
  readonly missing: number | null;
  readonly longestRun: number | null;
  readonly runs: readonly CountRun[];
  readonly judgedShare: number;
}

/** Neighbours that are asked on each side, twenty in all, and what the twenty must average. */
const ASIDE = 10;
const AVERAGE = 12;
/** Half of the neighbours on each side must have this many visits: a pause of the hand visits few counts very often. */
const HALF_HAVE = 6;
/** With less of the travel judged nothing is said. */
const LEAST_JUDGED = 0.5;
/** No log has the visits for more counts. */
const MOST_COUNTS = 2 ** 20;

/**
 * A count is missing that never occurs inside of `min` … `max`, both raw counts, while its 20 neighbours average 12 visits
 * or more, and half of those on either side have 6; of a run of missing counts the ten on either side of the run are its
 * neighbours. On a comb of `step` only the counts of the comb are looked at, and numbers of counts are numbers of its
 * teeth. Null where less than half of the travel has the visits.
 */
export function missingCounts(
  readings: readonly Float64Array[],
  min: number,
  max: number,
  step: number,
): MissingCounts {
  const places = Math.round((max - min) / step) + 1;
  if (!(places >= 2 && places <= MOST_COUNTS)) return { missing: null, longestRun: null, runs: [], judgedShare: 0 };
  const visits = countVisits(readings, min, step, places);
  const neighbours = new Neighbours(visits);
  let judged = 0;
  let missing = 0;
  const runs: CountRun[] = [];
  for (let place = 0; place < places; place += 1) {
    const first = place;
    while (visits[place] === 0 && visits[place + 1] === 0) place += 1;
    if (!neighbours.areVisited(first, place)) continue;
    const length = place + 1 - first;
    judged += length;
    if (visits[first] !== 0) continue;
    missing += length;
    runs.push({ from: min + first * step, to: min + place * step });
  }
  const judgedShare = judged / places;
  if (judgedShare < LEAST_JUDGED) return { missing: null, longestRun: null, runs: [], judgedShare };
  runs.sort((one, other) => other.to - other.from - (one.to - one.from) || one.from - other.from);
  const longest = runs[0] === undefined ? 0 : Math.round((runs[0].to - runs[0].from) / step) + 1;
  return { missing, longestRun: longest, runs, judgedShare };
}

/** Readings by place; those off the comb stand at a limit of the field and count for none. */
function countVisits(readings: readonly Float64Array[], min: number, step: number, places: number): Uint32Array {
  const visits = new Uint32Array(places);
  for (const counts of readings)
    for (const count of counts) {
      const place = (count - min) / step;
      if (Number.isInteger(place) && place >= 0 && place < places) visits[place] = (visits[place] ?? 0) + 1;
    }
  return visits;
}

/** Running sums, so that neighbours are added up at once. */
class Neighbours {
  readonly #places: number;
  readonly #visits: Float64Array;
  readonly #busy: Uint32Array;

  constructor(visits: Uint32Array) {
    this.#places = visits.length;
    this.#visits = new Float64Array(this.#places + 1);
    this.#busy = new Uint32Array(this.#places + 1);
    visits.forEach((count, place) => {
      this.#visits[place + 1] = (this.#visits[place] ?? 0) + count;
      this.#busy[place + 1] = (this.#busy[place] ?? 0) + (count >= HALF_HAVE ? 1 : 0);
    });
  }

  /** Of the places `first` … `last`, both included; near an end of the travel there are fewer neighbours, never none. */
  areVisited(first: number, last: number): boolean {
    const low = Math.max(0, first - ASIDE);
    const high = Math.min(this.#places, last + 1 + ASIDE);
    const within = (sums: Float64Array | Uint32Array, from: number, to: number): number =>
      (sums[to] ?? 0) - (sums[from] ?? 0);
    const [below, above] = [first - low, high - last - 1];
    const visits = within(this.#visits, low, first) + within(this.#visits, last + 1, high);
    const isBusy = (from: number, to: number): boolean => within(this.#busy, from, to) >= (to - from) / 2;
    return visits >= AVERAGE * (below + above) && isBusy(low, first) && isBusy(last + 1, high);
  }
}
