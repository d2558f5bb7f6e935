/** Makes a drawn line of few points out of many, so that no corner is lost. */

/**
 * Indices of the points to keep: of the line through them no point is farther off than `tolerance`, in the unit of the
 * points. `points` is flat; ends are always kept. Source: Ramer (1972), Douglas and Peucker (1973), from memory.
 */
export function thinPolyline(points: ArrayLike<number>, tolerance: number): number[] {
  const count = Math.floor(points.length / 2);
  if (count === 0) return [];
  const keep = new Uint8Array(count);
  keep[0] = 1;
  keep[count - 1] = 1;
  const open: [number, number][] = [[0, count - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [first, last] = span;
    const { index, distance } = farthestFrom(points, first, last);
    if (distance <= tolerance) continue;
    keep[index] = 1;
    open.push([first, index], [index, last]);
  }
  return [...keep.keys()].filter((index) => keep[index] === 1);
}

/** The point between two others that is farthest from the straight piece between them. */
function farthestFrom(
  points: ArrayLike<number>,
  first: number,
  last: number,
): { readonly index: number; readonly distance: number } {
  const ax = points[2 * first] ?? Number.NaN;
  const ay = points[2 * first + 1] ?? Number.NaN;
  const bx = (points[2 * last] ?? Number.NaN) - ax;
  const by = (points[2 * last + 1] ?? Number.NaN) - ay;
  const length = bx * bx + by * by;
  let index = first;
  let largest = 0;
  for (let i = first + 1; i < last; i += 1) {
    const dx = (points[2 * i] ?? Number.NaN) - ax;
    const dy = (points[2 * i + 1] ?? Number.NaN) - ay;
    const along = length === 0 ? 0 : Math.min(1, Math.max(0, (dx * bx + dy * by) / length));
    const off = (dx - along * bx) ** 2 + (dy - along * by) ** 2;
    if (off <= largest) continue;
    largest = off;
    index = i;
  }
  return { index, distance: Math.sqrt(largest) };
}
