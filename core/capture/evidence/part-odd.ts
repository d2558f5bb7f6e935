/** Parts the releases that came to rest far from all others from those that lie together. */
import { median } from '../../numeric/quantile.ts';
import type { StickFields } from '../../pad/stick.ts';
import type { Dwell } from './evidence.ts';

/** So many lie together at least, and no more than so many apart: more are no exceptions. */
const LEAST_TOGETHER = 11;
const MOST_ODD = 2;
/** Apart: so many robust σ of the others, and so much of the half range. */
const APART_SIGMA = 8;
const APART_SHARE = 0.02;
/** σ of a normal scatter from the median distance of its points. */
const NORMAL = 1.4826;

export interface Parted {
  readonly together: readonly Dwell[];
  /** Each with its number among all, from 1. */
  readonly odd: readonly { readonly number: number; readonly dwell: Dwell }[];
}

/** One or two releases of twelve or more; none otherwise. Distances are taken per axis from the median. */
export function partOdd(dwells: readonly Dwell[], fields: StickFields): Parted {
  const none = { together: dwells, odd: [] };
  if (dwells.length <= LEAST_TOGETHER) return none;
  const isApart = (['x', 'y'] as const).map((axis) => {
    const places = dwells.map(({ point }) => point[axis]);
    const middle = median(places);
    const sigma = NORMAL * median(places.map((place) => Math.abs(place - middle)));
    const least = Math.max(APART_SIGMA * sigma, (APART_SHARE * (fields[axis].maximum - fields[axis].minimum)) / 2, 2);
    return places.map((place) => Math.abs(place - middle) > least);
  });
  const odd = dwells.flatMap((dwell, i) =>
    isApart.some((axis) => axis[i] === true) ? [{ number: i + 1, dwell }] : [],
  );
  if (odd.length === 0 || odd.length > MOST_ODD || dwells.length - odd.length < LEAST_TOGETHER) return none;
  return { together: dwells.filter((_, i) => !odd.some(({ number }) => number === i + 1)), odd };
}
