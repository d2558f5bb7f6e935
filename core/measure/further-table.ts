/** What further captures of a stick say, as rows that a person reads: flicks, disturbances, warm-up, Allan deviation. */
import type { AllanMeasure } from './allan-measure.ts';
import type { DisturbanceMeasure } from './disturbance-measure.ts';
import type { FlickMeasure } from './flick-measure.ts';
import { formatPair, formatPercent, formatQuantity, NOTHING } from './format-quantity.ts';
import { row, type TableRow } from './table.ts';
import type { WarmUpMeasure } from './warm-up-measure.ts';

export function flickRows({ count, unread, overshoot, settlingUs }: FlickMeasure): TableRow[] {
  const millis = (us: number): string => formatQuantity(us / 1000, null, 0);
  return [
    row('flicks', unread === 0 ? String(count) : `${count}, ${unread} more could not be read`),
    row(
      'overshoot, largest, mean',
      `${formatPercent(overshoot.largest)}, ${formatPercent(overshoot.mean)}`,
      '% of full',
    ),
    row('settling, median, longest', `${millis(settlingUs.p50)}, ${millis(settlingUs.max)}`, 'ms'),
  ];
}

export function disturbanceRows(measures: readonly DisturbanceMeasure[]): TableRow[] {
  return measures.flatMap(({ of, shift, u95 }) =>
    (['x', 'y'] as const).map((axis) =>
      row(`${of}, shift ${axis}`, formatQuantity(shift[axis], u95?.[axis] ?? null, 2), 'counts'),
    ),
  );
}

const steadyWords = { true: 'steady', false: 'still drifting: wait', null: 'too few dwells to tell' };

export function warmUpRows({ dwells, seconds, drift, last, steady }: WarmUpMeasure): TableRow[] {
  const latest = last ?? drift;
  return [
    row('warm-up', steadyWords[`${steady}`]),
    row('dwells', `${dwells} in ${formatQuantity(seconds, null, 0)}`, 's'),
    row('latest drift x', formatQuantity(latest.x, latest.u95.x, 4), 'counts/s'),
    row('latest drift y', formatQuantity(latest.y, latest.u95.y, 4), 'counts/s'),
  ];
}

/** The least deviation, and the time that it takes: longer averages say no more. */
export function allanRows({ tauUs, x, y }: AllanMeasure): TableRow[] {
  const least = (deviations: readonly number[] | null) => {
    if (deviations === null) return NOTHING;
    const value = Math.min(...deviations);
    const millis = (tauUs[deviations.indexOf(value)] ?? Number.NaN) / 1000;
    return `${formatQuantity(value, null, 3)} after ${formatQuantity(millis, null, 0)} ms`;
  };
  const first = { x: x?.[0] ?? null, y: y?.[0] ?? null };
  return [
    row('Allan deviation of one report x, y', formatPair(first, 3), 'counts'),
    row('least Allan deviation x', least(x), 'counts'),
    row('least Allan deviation y', least(y), 'counts'),
  ];
}
