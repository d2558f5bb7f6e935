/** Makes a drawn line of few points out of many, so that no corner is lost. */

/**
 * How much each point matters to the line: dropping all points of at most some weight leaves a line from which none of
 * them is farther off than that, in the unit of the points. Ends matter without limit; what matters no more than
 * `finest` is 0. `points` is flat. Source: Ramer (1972), Douglas and Peucker (1973), from memory.
 */
export function pointWeights(points: ArrayLike<number>, finest: number): Float64Array {
  const count = Math.floor(points.length / 2);
  const weights = new Float64Array(count);
  if (count === 0) return weights;
  weights[0] = Number.POSITIVE_INFINITY;
  weights[count - 1] = Number.POSITIVE_INFINITY;
  const open: [number, number, number][] = [[0, count - 1, Number.POSITIVE_INFINITY]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [first, last, most] = span;
    const { index, distance } = farthestFrom(points, first, last);
    if (distance <= finest) continue;
    // A point inside of a dropped piece is dropped with it.
    const weight = Math.min(most, distance);
    weights[index] = weight;
    open.push([first, index, weight], [index, last, weight]);
  }
  return weights;
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
