/** The rest of a stick as rows that a person reads. */
import { formatPair, formatPercent, formatQuantity } from './format-quantity.ts';
import type { RestMeasure } from './rest-measure.ts';
import { row, type TableRow } from './table.ts';

export function restRows(rest: RestMeasure): TableRow[] {
  const { point, u95, offset, drift } = rest;
  return [
    row('releases', String(rest.releases)),
    row('rest point x', formatQuantity(point.x, u95.x, 2), 'counts'),
    row('rest point y', formatQuantity(point.y, u95.y, 2), 'counts'),
    row('enclosing circle, radius', formatQuantity(isOneRest(rest) ? null : rest.enclosing.radius, null, 2), 'counts'),
    row('noise σ x', noiseText(rest, 'x'), 'counts'),
    row('noise σ y', noiseText(rest, 'y'), 'counts'),
    row('peak to peak x, y', formatPair(rest.peakToPeak, 0), 'counts'),
    row('effective step x, y', formatPair(rest.step, 0), 'counts'),
    row('hysteresis x, y', formatPair(rest.hysteresis, 2), 'counts'),
    row('drift x', formatQuantity(drift?.x ?? null, drift?.u95.x ?? null, 4), 'counts/s'),
    row('drift y', formatQuantity(drift?.y ?? null, drift?.u95.y ?? null, 4), 'counts/s'),
    row('offset x, y', `${formatPercent(offset.x)}, ${formatPercent(offset.y)}`, '% of full'),
    row('offset, magnitude', formatPercent(offset.magnitude), '% of full'),
    row('largest reading at rest', formatPercent(offset.largest), '% of full'),
    row('tolerance radius, 99 % of releases', formatPercent(rest.toleranceRadius), '% of full'),
  ];
}

/** A circle about one point says nothing of how far rests spread. */
function isOneRest({ releases, enclosing }: RestMeasure): boolean {
  return releases <= 1 && enclosing.radius === 0;
}

function noiseText({ noise, noiseBelowStep }: RestMeasure, axis: 'x' | 'y'): string {
  const below = noiseBelowStep?.[axis] === true;
  const written = formatQuantity(noise?.[axis] ?? null, null, 3);
  if (!below) return written;
  return noise?.[axis] == null ? 'below the step' : `${written}, below the step`;
}
