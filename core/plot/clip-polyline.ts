/** Cuts a polyline to a frame, so that a magnified piece never draws outside its box. */

export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The parts of a polyline inside a frame (Liang and Barsky's parametric clipping, 1984), x and y in turn, with a NaN
 * pair between separate parts. A point that is not finite breaks the line as well.
 */
export function clipPolyline(points: ArrayLike<number>, frame: Frame): number[] {
  const out: number[] = [];
  for (let at = 0; at + 3 < points.length; at += 2) {
    const [x0, y0, x1, y1] = [points[at], points[at + 1], points[at + 2], points[at + 3]] as [
      number,
      number,
      number,
      number,
    ];
    const inside = insideShare(x0, y0, x1 - x0, y1 - y0, frame);
    if (inside === null) continue;
    const [from, to] = inside;
    const startX = x0 + from * (x1 - x0);
    const startY = y0 + from * (y1 - y0);
    const joined = out.length > 0 && from === 0 && out[out.length - 2] === startX && out[out.length - 1] === startY;
    if (!joined) {
      if (out.length > 0) out.push(Number.NaN, Number.NaN);
      out.push(startX, startY);
    }
    out.push(to === 1 ? x1 : x0 + to * (x1 - x0), to === 1 ? y1 : y0 + to * (y1 - y0));
  }
  return out;
}

function insideShare(x: number, y: number, dx: number, dy: number, frame: Frame): [number, number] | null {
  if (![x, y, dx, dy].every(Number.isFinite)) return null;
  let from = 0;
  let to = 1;
  const edges: readonly (readonly [number, number])[] = [
    [-dx, x - frame.x],
    [dx, frame.x + frame.width - x],
    [-dy, y - frame.y],
    [dy, frame.y + frame.height - y],
  ];
  for (const [slope, room] of edges) {
    if (slope === 0) {
      if (room < 0) return null;
    } else if (slope < 0) from = Math.max(from, room / slope);
    else to = Math.min(to, room / slope);
  }
  return from <= to ? [from, to] : null;
}
