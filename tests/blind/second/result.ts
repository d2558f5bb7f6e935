/** What a cell came to: the share of its draws that hold what is asked. */
import { isMissed, sayAsked, sayCount, type Demand } from '../demand.ts';
import type { Count } from '../exact-share.ts';
import type { Miss } from '../miss.ts';
import { demands, type Part } from './demands.ts';
import type { Judged } from './judge-draw.ts';
import { whyNotGated, type Where } from './not-gated.ts';

export interface Share extends Count {
  readonly demand: Demand;
  readonly isMissed: boolean;
  /** Why a miss of it does not fail the run; null where it does. */
  readonly known: string | null;
}

export interface Result {
  readonly part: Part;
  readonly name: string;
  /** A kind of pad, or `every pad`. */
  readonly pad: string;
  readonly shares: readonly Share[];
}

export function shareOf(of: Where, demand: Demand, count: Count): Share {
  return { ...count, demand, isMissed: isMissed(demand, count), known: whyNotGated(of, demand.what) };
}

export function resultOf(of: Pick<Result, 'part' | 'name' | 'pad'>, judged: readonly Judged[]): Result {
  const shares = demands[of.part].flatMap(({ demand, isAskedOf, holds }) => {
    const asked = judged.filter(isAskedOf);
    return asked.length === 0 ? [] : [shareOf(of, demand, { found: asked.filter(holds).length, of: asked.length })];
  });
  return { part: of.part, name: of.name, pad: of.pad, shares };
}

export function missesOf({ part, name, pad, shares }: Result): Miss[] {
  return shares
    .filter((share) => share.isMissed)
    .map(({ demand, known, ...count }) => ({
      where: `${pad} ${part} ${name}`,
      says: `${sayCount(demand, count)}; ${sayAsked(demand)} was asked for.`,
      known,
    }));
}
