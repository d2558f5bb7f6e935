/** What is asked of a share, and when it is missed: only where the exact interval of what was drawn excludes it. */
import { exactInterval95, type Count } from './exact-share.ts';

export type Demand = { readonly what: string } & ({ readonly atLeast: number } | { readonly atMost: number });

export function isMissed(demand: Demand, count: Count): boolean {
  const { low, high } = exactInterval95(count);
  return 'atLeast' in demand ? high < demand.atLeast : low > demand.atMost;
}

/** `59 of 60 named first or second (91.1 to 100.0 %)` */
export function sayCount({ what }: Demand, count: Count): string {
  const { low, high } = exactInterval95(count);
  const interval = `${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)} %`;
  return `${count.found} of ${count.of} ${what} (${interval})`;
}

export function sayAsked(demand: Demand): string {
  const [bound, share] = 'atLeast' in demand ? ['at least', demand.atLeast] : ['at most', demand.atMost];
  return `${bound} ${Number((100 * share).toPrecision(3))} % ${demand.what}`;
}
