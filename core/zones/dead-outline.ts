/** Where a chain begins to answer around nothing, drawn back into raw counts. */
import { undeflectAxis } from '../mapping/deflect-axis.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickFields } from '../pad/stick.ts';
import { onsetAlong } from './onset.ts';
import type { ChainFunction } from './run-chain.ts';

/** A multiple of eight, so that corners of axial zones lie on it. */
const CORNERS = 144;
const ORIGIN = { x: 0, y: 0 };

/**
 * Closed polyline of the first output on rays from the centre of the mapping, in raw counts as reported: x0, y0, x1, y1 … the
 * first point again at the end. A direction that gives nothing up to |d| = 1.5 ends there. Null where the chain makes output of
 * nothing, and where no direction gives any.
 */
export function deadOutline(mapping: StickMapping, fields: StickFields, run: ChainFunction): number[] | null {
  const edges = Array.from({ length: CORNERS }, (_, corner) => onsetAlong(run, ORIGIN, (360 / CORNERS) * corner, 1.5));
  if (edges.includes(0) || edges.every((edge) => edge === null)) return null;
  const points = edges.flatMap((edge, corner) => {
    const turn = (2 * Math.PI * corner) / CORNERS;
    const radius = edge ?? 1.5;
    return [
      undeflectAxis(mapping.x, fields.x.up, radius * Math.cos(turn)),
      undeflectAxis(mapping.y, fields.y.up, radius * Math.sin(turn)),
    ];
  });
  return [...points, ...points.slice(0, 2)];
}
