/** The farthest or the nearest point of a set in each of many directions: what long point sets are thinned by. */

/** Which of `count` equal shares of the square's outline |x| + |y| = 1 the vector points to; each spans 4/count to 8/count radians. */
export function outlineShare(dx: number, dy: number, count: number): number {
  const along = dy / (Math.abs(dx) + Math.abs(dy));
  const turned = dx < 0 ? 2 - along : dy < 0 ? 4 + along : along;
  // The null vector has no direction: the first will do.
  return turned >= 4 || turned !== turned ? 0 : Math.floor((turned / 4) * count);
}

/** Largest angle between two vectors of one share, in radians. */
export function shareAngle(count: number): number {
  return 8 / count;
}

/** Index of the point (not of its number) farthest from (x, y), or nearest to it, in every share; null where one has no point. */
export function extremesByDirection(
  points: ArrayLike<number>,
  x: number,
  y: number,
  count: number,
  which: 'farthest' | 'nearest',
): Uint32Array | null {
  const sign = which === 'farthest' ? 1 : -1;
  const found = new Float64Array(count).fill(-Infinity);
  const extremes = new Uint32Array(count);
  for (let i = 0; 2 * i + 1 < points.length; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    const share = outlineShare(dx, dy, count);
    const rank = sign * (dx * dx + dy * dy);
    if (rank <= (found[share] ?? NaN)) continue;
    found[share] = rank;
    extremes[share] = i;
  }
  return found.includes(-Infinity) ? null : extremes;
}
