/** What a survey saw of a stick as a mapping: its extents with the rest as centre. For finding and comparing stored numbers. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import type { Pair } from '../pad/stick.ts';
import type { StickMapping } from './mapping.ts';

/**
 * Per axis the least and greatest raw count of all turns and the mean of the rest points, in whole counts as reported. Null
 * without a rest or a turn, and where an extent does not lie beyond the rest (the turns did not go round it).
 */
export function measuredMapping({ rest, rim }: StickEvidence): StickMapping | null {
  if (rest === null || rest.dwells.length === 0 || rim === null || rim.turns.length === 0) return null;
  const { dwells } = rest;
  const centre = (axis: keyof Pair): number =>
    Math.round(dwells.reduce((sum, dwell) => sum + dwell.point[axis], 0) / dwells.length);
  const extremes = rim.turns.map((turn) => turn.extremes);
  const mapping: StickMapping = {
    x: {
      min: Math.min(...extremes.map(({ xMin }) => xMin)),
      centre: centre('x'),
      max: Math.max(...extremes.map(({ xMax }) => xMax)),
    },
    y: {
      min: Math.min(...extremes.map(({ yMin }) => yMin)),
      centre: centre('y'),
      max: Math.max(...extremes.map(({ yMax }) => yMax)),
    },
  };
  const isInOrder = [mapping.x, mapping.y].every(({ min, centre: middle, max }) => min < middle && middle < max);
  return isInOrder ? mapping : null;
}
