/** The rim of a stick as rows that a person reads. */
import { formatPair, formatPercent, formatQuantity, NOTHING } from './format-quantity.ts';
import type { RimMeasure } from './rim-measure.ts';
import { row, type TableRow } from './table.ts';

export function rimRows(rim: RimMeasure): TableRow[] {
  const { turns, directions, leastReach, overreach, headroom, circle, ellipse, roundness } = rim;
  const covered = directions.filter((one) => one.covered).length;
  const thin = directions.filter((one) => one.state === 'thin').length;
  return [
    row('turns clockwise, counter-clockwise', `${turns.clockwise}, ${turns.counterClockwise}`),
    row('directions covered', `${covered} of ${directions.length}${thin === 0 ? '' : `, ${thin} thin`}`),
    row('least reach', at(leastReach), '% of full'),
    row('overreach', at(overreach), '% of full'),
    row('mean radial error', formatPercent(rim.meanRadialError), '% of full'),
    row('root mean square radial error', formatPercent(rim.rmsRadialError), '% of full'),
    row('full reach', formatPercent(rim.fullReachShare, 1), '% of covered'),
    row('at a field limit, reach at least', formatPercent(rim.atLimitShare, 1), '% of covered'),
    row('spread over turns', formatPercent(rim.pooledSpread, 3), `% of full, ${rim.pooledDegrees} degrees of freedom`),
    row('direction hysteresis', formatPercent(rim.directionHysteresis, 3), '% of full'),
    row('largest difference between ways', formatPercent(rim.turnErrors?.hysteresis ?? null, 3), '% of full'),
    row('largest difference one way', formatPercent(rim.turnErrors?.repeatability ?? null, 3), '% of full'),
    row('headroom x low, high', headroom === null ? NOTHING : `${headroom.xMin}, ${headroom.xMax}`, 'counts'),
    row('headroom y low, high', headroom === null ? NOTHING : `${headroom.yMin}, ${headroom.yMax}`, 'counts'),
    row('circle x, y', formatPair(circle, 1), 'counts'),
    row('circle, radius', formatQuantity(circle?.radius ?? null, null, 1), 'counts'),
    row('ellipse, half axes', formatPair(ellipse === null ? null : { x: ellipse.a, y: ellipse.b }, 1), 'counts'),
    row('ellipse, direction of the long axis', formatQuantity(ellipse?.angle ?? null, null, 1), '°'),
    row('skew of the axes', formatQuantity(rim.skew, null, 2), '°'),
    row('roundness, least squares', formatQuantity(roundness?.leastSquares ?? null, null, 2), 'counts'),
    row('roundness, minimum zone', formatQuantity(roundness?.minimumZone ?? null, null, 2), 'counts'),
    row('roundness, minimum circumscribed', formatQuantity(roundness?.minimumCircumscribed ?? null, null, 2), 'counts'),
    row('roundness, maximum inscribed', formatQuantity(roundness?.maximumInscribed ?? null, null, 2), 'counts'),
  ];
}

function at(place: { readonly value: number; readonly angle: number } | null): string {
  return place === null ? NOTHING : `${formatPercent(place.value)} at ${place.angle}°`;
}
