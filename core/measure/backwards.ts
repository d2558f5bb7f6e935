/** Monotony of slow sweeps: how much of them goes back, and where they do so again and again. */
import { betaShare } from '../numeric/beta-share.ts';
import { median } from '../numeric/quantile.ts';
import { unionLength } from './union-length.ts';
import type { AxisTravel, CountRun } from './travel-measure.ts';

/** A reading is behind by more than noise explains beyond so many of its σ and so many steps. */
const NOISES = 4;
const STEPS = 2;
/** What goes back over more of the travel than this is no place: a push, or a signal that left. */
const WIDEST = 0.15;
/** So near to the ends of the travel a stick that meets its gate bounces off it. */
const ENDS = 0.03;
const FEWEST = 3;
/** Ways back that fall anywhere meet as often at one place in one survey of so many. */
const SELDOM = 0.01;

/** From the farthest reading of a sweep down to the one farthest behind it. */
interface WayBack extends CountRun {
  readonly sweep: number;
}

type Place = NonNullable<AxisTravel['backwardsAt']>[number];

/**
 * Share of the readings of sweeps that lie behind the farthest one before them by more than max(4σ, 2 steps), σ the usual
 * noise of the axis. `sweeps` are running medians of raw counts, each along its own way. A hand that hesitates and goes
 * back counts too. Null without readings.
 */
export function backwardShare(sweeps: readonly Float64Array[], noise: number, step: number): number | null {
  let [readings, behind] = [0, 0];
  for (const sweep of sweeps)
    follow(sweep, (along, farthest) => {
      readings += 1;
      if (farthest - along > leastBehind(noise, step)) behind += 1;
    });
  return readings === 0 ? null : behind / readings;
}

/**
 * Where sweep after sweep goes back, longest first, of raw counts: a hand goes back too, and single readings leap, but not at the same place
 * each time. A place is told where so many sweeps go back as ways back of their number and lengths, fallen anywhere on the
 * travel, would in one survey of a hundred at most: a binomial tail, times the places that there is room for. The ends of the
 * travel are left out. Null with fewer than three sweeps, in which no place can be told.
 */
export function backwardPlaces(
  sweeps: readonly Float64Array[],
  noise: number,
  step: number,
  { from, to }: CountRun,
): readonly Place[] | null {
  if (sweeps.filter(({ length }) => length > 0).length < FEWEST) return null;
  const [length, ends] = [to - from, ENDS * (to - from)];
  const ways = sweeps
    .flatMap((counts, sweep) => waysBack(counts, leastBehind(noise, step)).map((way) => ({ ...way, sweep })))
    .filter((way) => way.to - way.from <= WIDEST * length && way.to > from + ends && way.from < to - ends);
  // What one sweep goes back over twice is no second chance to meet another sweep's.
  const covered = sweeps.reduce((sum, _, sweep) => sum + unionLength(ways.filter((way) => way.sweep === sweep)), 0);
  const chance = Math.min(1, covered / (sweeps.length * length));
  const room = (ways.length * length) / covered;
  const places: Place[] = [];
  for (let left: readonly WayBack[] = ways; ;) {
    const members = mostAtOnce(left);
    const many = sweepsIn(members);
    if (many < 2 || room * betaShare(chance, 1 - chance, many, sweeps.length - many + 1) > SELDOM) break;
    const place = { from: median(members.map((one) => one.from)), to: median(members.map((one) => one.to)) };
    places.push({ ...place, sweeps: many });
    left = left.filter((one) => !members.includes(one) && (one.to < place.from || one.from > place.to));
  }
  return places.toSorted((a, b) => b.to - b.from - (a.to - a.from));
}

function leastBehind(noise: number, step: number): number {
  return Math.max(NOISES * noise, STEPS * step);
}

/** Each reading along its sweep's own way, with the farthest before it or itself. */
function follow(sweep: Float64Array, see: (along: number, farthest: number, way: number) => void): void {
  const way = Math.sign((sweep.at(-1) ?? 0) - (sweep[0] ?? 0));
  let farthest = Number.NEGATIVE_INFINITY;
  for (const count of sweep) {
    farthest = Math.max(farthest, way * count);
    see(way * count, farthest, way);
  }
}

/** A way back lasts until a reading is as far as any before it. */
function waysBack(sweep: Float64Array, least: number): CountRun[] {
  const ways: CountRun[] = [];
  let [lowest, before] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const end = (way: number): void => {
    if (before - lowest > least) ways.push(way > 0 ? { from: lowest, to: before } : { from: -before, to: -lowest });
    lowest = Number.POSITIVE_INFINITY;
  };
  let last = 1;
  follow(sweep, (along, farthest, way) => {
    if (along >= farthest) end(way);
    else lowest = Math.min(lowest, along);
    [before, last] = [farthest, way];
  });
  end(last);
  return ways;
}

/** Those over one count, where the most sweeps go back over it. */
function mostAtOnce(ways: readonly WayBack[]): readonly WayBack[] {
  let [most, best] = [0, [] as readonly WayBack[]];
  for (const { from: count } of ways) {
    const over = ways.filter(({ from, to }) => from <= count && count <= to);
    if (sweepsIn(over) > most) [most, best] = [sweepsIn(over), over];
  }
  return best;
}

function sweepsIn(ways: readonly WayBack[]): number {
  return new Set(ways.map(({ sweep }) => sweep)).size;
}
