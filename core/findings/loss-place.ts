/** Whether the losses of a signal lie at one place of the stick. */
import type { SignalLoss } from '../capture/evidence/signal-losses.ts';
import type { Subject } from './subject.ts';

export type LossPlace =
  | {
      readonly kind: 'directions';
      readonly from: number;
      readonly to: number;
      readonly within: number;
      readonly turns: number;
    }
  | {
      readonly kind: 'counts';
      readonly axis: 'x' | 'y';
      readonly from: number;
      readonly to: number;
      readonly within: number;
    };

/** So many of the losses must lie together, and so many in all. */
const MOST = 0.6;
const LEAST = 3;
/** At the gate: at least this share of the half travel from the rest. */
const AT_GATE = 0.7;
/** A place of the gate is no wider than this, one of an axis no wider than this share of its travel. */
const WIDEST_DEGREES = 75;
const WIDEST_SHARE = 0.08;
/** As near to a worn stretch, in half travels, as its ends are known. */
const BESIDE = 0.02;
/** Losses are counted once in half a second: a contact that chatters opens many times at one place. */
const APART_US = 500_000;

/** Null where they lie now here, now there, or are too few. */
export function lossPlace({ losses, report, fields, half }: Subject): LossPlace | null {
  const rest = report.rest?.point;
  if (rest === undefined || losses.length < LEAST) return null;
  const ends = losses.map((loss) => ({ loss, ...endsOf(loss) }));
  const angles = ends.flatMap(({ loss, x, y }) => {
    const dx = (fields.x.up * (x - rest.x)) / half.x;
    const dy = (fields.y.up * (y - rest.y)) / half.y;
    return Math.hypot(dx, dy) < AT_GATE ? [] : [{ at: ((Math.atan2(dy, dx) * 180) / Math.PI + 360) % 360, loss }];
  });
  const round = [...angles, ...angles.map(({ at, loss }) => ({ at: at + 360, loss }))];
  const sector = densest(round, WIDEST_DEGREES);
  const counts = (['x', 'y'] as const).map((axis) => ({
    axis,
    found: densest(
      ends.map(({ loss, ...end }) => ({ at: end[axis], loss })),
      WIDEST_SHARE * 2 * half[axis],
    ),
  }));
  const [best] = counts.toSorted((a, b) => b.found.losses.length - a.found.losses.length);
  if (
    best !== undefined &&
    isMost(best.found.losses.length, losses.length) &&
    best.found.losses.length >= sector.losses.length
  ) {
    const { from, to } = best.found;
    return {
      kind: 'counts',
      axis: best.axis,
      from: Math.round(from),
      to: Math.round(to),
      within: best.found.losses.length,
    };
  }
  if (!isMost(sector.losses.length, losses.length)) return null;
  return {
    kind: 'directions',
    from: Math.round(sector.from),
    to: Math.round(sector.to),
    within: sector.losses.length,
    turns: passesOf(sector.losses),
  };
}

/** Share of the losses that lie on or beside an unsteady stretch of either axis; 0 without any. */
export function lossesOnWorn({ losses, report, half }: Subject): number {
  const isOn = (loss: SignalLoss): boolean =>
    (['x', 'y'] as const).some((axis) =>
      (report.travel?.[axis]?.unsteady ?? []).some(({ from, to }) => {
        const beside = BESIDE * half[axis];
        const [low, high] = [
          Math.min(loss.before[axis], loss.after[axis]),
          Math.max(loss.before[axis], loss.after[axis]),
        ];
        return high >= from - beside && low <= to + beside;
      }),
    );
  return losses.length === 0 ? 0 : losses.filter(isOn).length / losses.length;
}

function isMost(within: number, all: number): boolean {
  return within >= LEAST && within >= MOST * all;
}

/** The middle between the readings about a loss; where it lasts, the stick moves on meanwhile. */
function endsOf({ before, after }: SignalLoss): { x: number; y: number } {
  return { x: (before.x + after.x) / 2, y: (before.y + after.y) / 2 };
}

interface At {
  readonly at: number;
  readonly loss: SignalLoss;
}

/** The window of a width that holds most. */
function densest(places: readonly At[], width: number): { from: number; to: number; losses: SignalLoss[] } {
  const sorted = places.toSorted((a, b) => a.at - b.at);
  let best: readonly At[] = [];
  let first = 0;
  sorted.forEach(({ at }, last) => {
    while ((sorted[first]?.at ?? at) < at - width) first += 1;
    if (last + 1 - first > best.length) best = sorted.slice(first, last + 1);
  });
  return { from: best[0]?.at ?? 0, to: best.at(-1)?.at ?? 0, losses: best.map(({ loss }) => loss) };
}

/** How many times the stick passed there and lost it. */
function passesOf(losses: readonly SignalLoss[]): number {
  const times = losses.map(({ startUs }) => startUs).toSorted((a, b) => a - b);
  return times.filter((t, i) => i === 0 || t - (times[i - 1] ?? 0) > APART_US).length;
}
