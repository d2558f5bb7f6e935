/** Reads an image at every byte in every form, and tells where the numbers are near those that are sought. */
import { finderLayouts } from './finder-codecs.ts';
import type { Layout } from './finder-layouts.ts';
import { soughtNear, type ReadAxis, type Sought, type SoughtAxis, type SoughtGrid } from './finder-targets.ts';
import type { NearStick } from './near-stick.ts';
import { NearbyNumbers } from './nearby-numbers.ts';
import { LANES } from './number-lanes.ts';
import type { NumberShares } from './number-shares.ts';
import { shareOf } from './sought-numbers.ts';

/**
 * Tells each in the order of the offsets. `mostShare`: only those are wanted whose chance at any one byte is at most this, which
 * passes over most that are far off without a further look.
 */
export function scanImage(
  grid: SoughtGrid,
  shares: NumberShares,
  mostShare: number,
  found: (near: NearStick) => void,
): void {
  const { image } = shares;
  const readers = finderLayouts
    .filter(({ numbers: [first] }) => first?.lane !== 'byte' || grid.highest < 3 * LANES.byte.numbers)
    .map((layout) => readerOf(layout, shares, mostShare));
  const [a, b] = [newAxis(), newAxis()];
  for (let offset = 0; offset < image.length; offset += 1)
    for (const { layout, first, second, most } of readers) {
      if (offset + layout.length > image.length || !first(offset, grid.highest, a) || !second(offset, grid.highest, b))
        continue;
      for (const sought of soughtNear(grid, layout.edges, a, b)) {
        const furthest = furthestOf(layout.edges, a, b, sought);
        if (furthest > most) continue;
        const share = shareOf(layout, sought, furthest, shares);
        if (share > mostShare) continue;
        const nearby = new NearbyNumbers(layout, sought, offset, furthest, shares);
        found({ sought, layout, offset, furthest, share, nearby });
      }
    }
}

/** Filled anew at each byte. */
type FilledAxis = { -readonly [Number in keyof ReadAxis]: ReadAxis[Number] };

function newAxis(): FilledAxis {
  return { low: 0, centre: 0, high: 0 };
}

interface Reader {
  readonly layout: Layout;
  readonly first: AxisReader;
  readonly second: AxisReader;
  /** Further off, even chances alone are too many. */
  readonly most: number;
}

function readerOf(layout: Layout, shares: NumberShares, mostShare: number): Reader {
  const [lane = 'byte'] = layout.numbers.map((number) => number.lane);
  const near = (LANES[lane].numbers * mostShare ** (1 / layout.numbers.length)) / 2;
  const most = mostShare < 1 ? near : Number.MAX_VALUE;
  return { layout, first: axisReader(shares, layout, 0), second: axisReader(shares, layout, 1), most };
}

type AxisReader = (offset: number, highest: number, into: FilledAxis) => boolean;

/** False where the numbers do not grow, or reach further than anything that is sought. */
function axisReader(shares: NumberShares, layout: Layout, axis: 0 | 1): AxisReader {
  const { edges } = layout;
  const own = layout.numbers.filter((number) => number.axis === axis);
  const at = (part: keyof ReadAxis): number => own.find((number) => number.part === part)?.at ?? 0;
  const [lowAt, centreAt, highAt] = [at('low'), at('centre'), at('high')];
  const numbers = shares.numbers(own[0]?.lane ?? 'byte');
  return (offset, highest, into) => {
    const centre = numbers[offset + centreAt] ?? 0;
    const low = numbers[offset + lowAt] ?? 0;
    if (centre > highest || (edges ? low >= centre : low > centre || low === 0)) return false;
    const high = numbers[offset + highAt] ?? 0;
    const max = edges ? high : centre + high;
    if (max <= centre || max > highest) return false;
    into.low = low;
    into.centre = centre;
    into.high = high;
    return true;
  };
}

/** Infinite where one of the six is not near. */
function furthestOf(edges: boolean, a: ReadAxis, b: ReadAxis, { first, second }: Sought): number {
  const [one, other] = [offBy(edges, a, first), offBy(edges, b, second)];
  return one <= first.near && other <= second.near ? Math.max(one, other) : Number.POSITIVE_INFINITY;
}

function offBy(edges: boolean, { low, centre, high }: ReadAxis, sought: SoughtAxis): number {
  const ends = edges ? sought.edges : sought.spans;
  return Math.max(Math.abs(low - ends.low), Math.abs(centre - sought.centre), Math.abs(high - ends.high));
}
