/** Points as seen from a centre: the band between the nearest and the farthest. All point sets are flat. */

/** What a centre is judged by: the outer points for the largest distance (none: it counts as 0), the inner for the least. */
export interface BandPoints {
  readonly outer: Float64Array;
  readonly inner: Float64Array;
}

export interface Band {
  /** Largest distance to an outer point; 0 without outer points. */
  readonly greatest: number;
  /** Least distance to an inner point. */
  readonly least: number;
  readonly width: number;
}

/** The band of the points about the centre (x, y); width = greatest − least, in the unit of the points. */
export function bandAt(points: BandPoints, x: number, y: number): Band {
  const { outer, inner } = points;
  let far = 0;
  for (let i = 0; i < outer.length; i += 2) {
    const dx = (outer[i] ?? NaN) - x;
    const dy = (outer[i + 1] ?? NaN) - y;
    const square = dx * dx + dy * dy;
    if (square > far) far = square;
  }
  let near = Infinity;
  for (let i = 0; i < inner.length; i += 2) {
    const dx = (inner[i] ?? NaN) - x;
    const dy = (inner[i + 1] ?? NaN) - y;
    const square = dx * dx + dy * dy;
    if (square < near) near = square;
  }
  const greatest = Math.sqrt(far);
  const least = Math.sqrt(near);
  return { greatest, least, width: greatest - least };
}

/** The points that can be farthest or nearest for some centre within `reach` of (x, y), whose band is given. */
export function narrowPoints(points: BandPoints, band: Band, x: number, y: number, reach: number): BandPoints {
  // A hair more than twice the reach, so that rounding loses no contact.
  const slack = 2 * reach + 1e-15;
  return {
    outer: keepPoints(points.outer, x, y, band.greatest - slack, Infinity),
    inner: keepPoints(points.inner, x, y, 0, band.least + slack),
  };
}

function keepPoints(points: Float64Array, x: number, y: number, from: number, to: number): Float64Array {
  const low = from <= 0 ? 0 : from * from;
  const high = to * to;
  const kept = new Float64Array(points.length);
  let size = 0;
  for (let i = 0; i < points.length; i += 2) {
    const px = points[i] ?? NaN;
    const py = points[i + 1] ?? NaN;
    const dx = px - x;
    const dy = py - y;
    const square = dx * dx + dy * dy;
    if (square < low || square > high) continue;
    kept[size] = px;
    kept[size + 1] = py;
    size += 2;
  }
  return kept.slice(0, size);
}
