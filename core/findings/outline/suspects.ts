/** Decides between a seat that is not flat and a side that gives less, and says how sure that is. */
import type { Limits } from '../limits.ts';
import type { Subject } from '../subject.ts';
import { weigh, type Estimate, type Suspect } from './seat-or-side.ts';

/** How one suspect comes out. */
export interface Suspected {
  /** Of the seat: the rest as seen from the gate's centre, shares of the half travel, y up; null of a side. */
  readonly shift: { readonly x: number; readonly y: number } | null;
  /** Of an axis: which side gives less, +1 right or up; 0 of the seat. */
  readonly side: 1 | -1 | 0;
  readonly value: number;
  readonly u95: number;
  readonly isFault: boolean;
  /** The other suspect that would explain the same outline, and the odds for this one against it. */
  readonly rival: { readonly is: Suspect; readonly odds: number } | null;
}

export type Suspects = Readonly<Record<Suspect, Suspected>>;

const COVERAGE = 2;
/** What hides more than this of a seat (0.6°) or of a side allows no judgement: a gate seen in a few directions only. */
export const FINEST = { seat: 0.025, side: 0.05 } as const;
/** With odds beyond these the less likely of two suspects is not named. */
const SURE = 20;

/**
 * Each suspect alone first. Of those beyond their limit by more than U the likeliest by its evidence stands; another stands
 * beside it where it is beyond its limit with both suspected, or, as a rival, where the odds are not 20 to 1 against it; else it has the value
 * that is left to it beside the likeliest. Null without an outline about a rest whose uncertainty is known.
 */
export function suspectsOf(subject: Subject, limits: Limits): Suspects | null {
  const { outline, aboutRest, report, half, pinned, domain } = subject;
  const { x = null, y = null } = report.rest?.u95 ?? {};
  if (outline === null || !aboutRest || x === null || y === null) return null;
  const rest = { x: (x / COVERAGE / half.x) ** 2, y: (y / COVERAGE / half.y) ** 2 };
  // A side that a sensor clips is judged as clipped; a pad's own limit clips nothing of the part, and its points are left out.
  const named = (['seat', 'x', 'y'] as const).filter(
    (one) => domain === 'reported' || !pinned.some(({ axis }) => axis === one),
  );
  const limitOf = (one: Suspect): number => (one === 'seat' ? limits.seat.value : limits.shortRange.value);
  const look = (one: Suspect, suspected: readonly Suspect[]): Looked | null => {
    const estimate = weigh(outline, rest, suspected);
    return estimate === null ? null : { estimate, ...(one === 'seat' ? seatOf(estimate) : sideOf(estimate, one)) };
  };
  const alone = { seat: look('seat', ['seat']), x: look('x', ['x']), y: look('y', ['y']) };
  if (alone.seat === null || alone.x === null || alone.y === null) return null;
  const beyond = named
    .flatMap((one) =>
      isBeyond(alone[one], limitOf(one)) ? [{ one, evidence: alone[one]?.estimate.evidence ?? 0 }] : [],
    )
    .toSorted((a, b) => b.evidence - a.evidence);
  const [first, second] = beyond;
  const judge = (one: Suspect, looked: Looked): Suspected => {
    const own = { shift: looked.shift, side: looked.side, value: looked.value, u95: looked.u95 };
    const rank = beyond.find((other) => other.one === one);
    if (rank === undefined || first === undefined) return { ...own, isFault: false, rival: null };
    if (rank === first)
      return {
        ...own,
        isFault: true,
        rival: second === undefined ? null : nearRival(second.one, first.evidence - second.evidence),
      };
    const both = look(one, [first.one, one]);
    const beside = both === null ? own : { shift: both.shift, side: both.side, value: both.value, u95: both.u95 };
    if (isBeyond(both, limitOf(one))) return { ...beside, isFault: true, rival: null };
    const rival = rivalOf(first.one, rank.evidence - first.evidence);
    // What the other explains is no value of this one.
    return rival.odds > 1 / SURE ? { ...own, isFault: true, rival } : { ...beside, isFault: false, rival };
  };
  return { seat: judge('seat', alone.seat), x: judge('x', alone.x), y: judge('y', alone.y) };
}

type Looked = Pick<Suspected, 'shift' | 'side' | 'value' | 'u95'> & { readonly estimate: Estimate };

function isBeyond(looked: Looked | null, limit: number): boolean {
  return (
    looked !== null && looked.u95 <= FINEST[looked.side === 0 ? 'seat' : 'side'] && looked.value - looked.u95 > limit
  );
}

/** None where the odds against it are such that it is not worth a thought at the bench. */
function nearRival(is: Suspect, logOdds: number): Suspected['rival'] {
  const rival = rivalOf(is, logOdds);
  return rival.odds > SURE ? null : rival;
}

function rivalOf(is: Suspect, logOdds: number): NonNullable<Suspected['rival']> {
  return { is, odds: Math.exp(logOdds) };
}

/** U is that along the direction of the shift. */
function seatOf({ mean: [cx = 0, cy = 0], sigma: [sx = 0, sy = 0] }: Estimate): Omit<Looked, 'estimate'> {
  const shift = { x: -cx + 0, y: -cy + 0 };
  const value = Math.hypot(cx, cy);
  const u95 = COVERAGE * (value === 0 ? Math.max(sx, sy) : Math.hypot((cx * sx) / value, (cy * sy) / value));
  return { shift, side: 0, value, u95 };
}

function sideOf({ mean, sigma }: Estimate, axis: 'x' | 'y'): Omit<Looked, 'estimate'> {
  const index = axis === 'x' ? 2 : 3;
  const difference = mean[index] ?? 0;
  return {
    shift: null,
    side: difference > 0 ? -1 : 1,
    value: 1 - Math.exp(-Math.abs(difference)),
    u95: COVERAGE * (sigma[index] ?? 0),
  };
}
