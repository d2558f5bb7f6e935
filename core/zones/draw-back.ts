/** Circles and zones of the deflection plane drawn back into raw counts under a mapping. */
import { undeflectAxis } from '../mapping/deflect-axis.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickFields } from '../pad/stick.ts';

/** The shapes that have an outline of their own, with the edge inside which nothing comes out. */
export interface OutlinedZone {
  readonly shape: 'axial' | 'radial' | 'scaledRadial';
  readonly inner: number;
}

/** A multiple of four, so that a corner lies on each axis, where the mapping changes its scale. */
const CORNERS = 144;

/**
 * Closed polyline of |d| = radius in raw counts as reported: x0, y0, x1, y1 … the first point again at the end. Radius 1 is
 * the unit circle, a needed output its own circle. Under a mapping each quadrant becomes a quarter of another ellipse.
 */
export function circleOutline(mapping: StickMapping, fields: StickFields, radius: number): number[] {
  return Array.from({ length: CORNERS + 1 }, (_, corner) => {
    const turn = (2 * Math.PI * (corner % CORNERS)) / CORNERS;
    return drawBack(mapping, fields, radius * Math.cos(turn), radius * Math.sin(turn));
  }).flat();
}

/** Closed polyline of the edge where a zone's output becomes 0 on both axes: a circle, or a square for `axial`. */
export function zoneOutline(mapping: StickMapping, fields: StickFields, zone: OutlinedZone): number[] {
  const { shape, inner } = zone;
  if (shape !== 'axial') return circleOutline(mapping, fields, inner);
  const corners = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
    [1, 1],
  ] as const;
  return corners.flatMap(([x, y]) => drawBack(mapping, fields, x * inner, y * inner));
}

function drawBack(mapping: StickMapping, fields: StickFields, x: number, y: number): [number, number] {
  return [undeflectAxis(mapping.x, fields.x.up, x), undeflectAxis(mapping.y, fields.y.up, y)];
}
