/** The travel of a stick as rows that a person reads. */
import { formatQuantity, NOTHING } from './format-quantity.ts';
import { row, type TableRow } from './table.ts';
import type { AxisTravel, TravelMeasure } from './travel-measure.ts';

/** Places that are named; `--json` has all. */
const NAMED = 3;

export function travelRows(travel: TravelMeasure): TableRow[] {
  return [
    row('slow sweeps', String(travel.sweeps)),
    ...axisRows('x', travel.x),
    ...axisRows('y', travel.y),
    row('turn of the part', formatQuantity(travel.turnAngle, travel.turnU95, 1), '°'),
    row('skew of the axes as prompted', formatQuantity(travel.skewAngle, travel.skewU95, 1), '°'),
  ];
}

function axisRows(axis: 'x' | 'y', travel: AxisTravel | null): TableRow[] {
  if (travel === null) return [row(`travel ${axis}`, 'not to both sides of the rest')];
  const { missing, longestRun, judgedShare, jumps, jumpsAt, backwards, backwardsAt, unsteady } = travel;
  const places = jumpsAt.slice(0, NAMED).map((count) => Math.round(count));
  return [
    row(`travel ${axis}`, `${formatQuantity(travel.min, null, 0)} … ${formatQuantity(travel.max, null, 0)}`, 'counts'),
    row(
      `missing counts ${axis}, longest run`,
      missing === null ? 'too few visits to tell' : `${missing}, ${longestRun ?? NOTHING}`,
      missing === null ? '' : `of ${Math.round(100 * judgedShare)} % judged`,
    ),
    row(`jumps ${axis}`, jumpsText(jumps, places)),
    row(
      `readings that go back ${axis}`,
      backwards === null ? NOTHING : formatQuantity(100 * backwards, null, 2),
      '% of sweeps',
    ),
    row(`going back ${axis} at`, backwardsAt === null ? NOTHING : backwardsText(backwardsAt)),
    row(`unsteady counts ${axis}`, unsteady === null ? 'too few readings to tell' : unsteadyText(unsteady)),
  ];
}

function jumpsText(jumps: number | null, places: readonly number[]): string {
  if (jumps === null) return 'reports come too unevenly to tell';
  return jumps === 0 ? '0' : `${jumps}, at ${places.join(', ')}${jumps > NAMED ? ' …' : ''}`;
}

function backwardsText(places: NonNullable<AxisTravel['backwardsAt']>): string {
  if (places.length === 0) return 'no place';
  return places
    .slice(0, NAMED)
    .map(({ from, to, sweeps }) => `${Math.round(from)} … ${Math.round(to)} (${sweeps} sweeps)`)
    .join(', ');
}

function unsteadyText(unsteady: NonNullable<AxisTravel['unsteady']>): string {
  if (unsteady.length === 0) return 'none';
  const worst = unsteady.toSorted((a, b) => b.times - a.times).slice(0, NAMED);
  return worst
    .map(({ from, to, times }) => `${Math.round(from)} … ${Math.round(to)} (${times.toFixed(1)} times)`)
    .join(', ');
}
