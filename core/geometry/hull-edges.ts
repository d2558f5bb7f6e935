/** Edges of a convex hull as lines that keep it on their left: inward unit normal and offset, three numbers an edge. */
export function hullEdges(hull: Float64Array): Float64Array {
  const n = hull.length / 2;
  const edges = new Float64Array(3 * n);
  for (let i = 0; i < n; i += 1) {
    const ax = hull[2 * i] ?? NaN;
    const ay = hull[2 * i + 1] ?? NaN;
    const dx = (hull[(2 * i + 2) % hull.length] ?? NaN) - ax;
    const dy = (hull[(2 * i + 3) % hull.length] ?? NaN) - ay;
    const length = Math.hypot(dx, dy);
    edges[3 * i] = -dy / length;
    edges[3 * i + 1] = dx / length;
    edges[3 * i + 2] = (dy * ax - dx * ay) / length;
  }
  return edges;
}

/** Where the disc of `reach` about (x, y) lies: the least distance inside the edges, and the edges it meets. */
export function meetEdges(
  edges: Float64Array,
  x: number,
  y: number,
  reach: number,
): { depth: number; edges: Float64Array } {
  let depth = Infinity;
  const met = new Float64Array(edges.length);
  let size = 0;
  for (let i = 0; i < edges.length; i += 3) {
    const nx = edges[i] ?? NaN;
    const ny = edges[i + 1] ?? NaN;
    const offset = edges[i + 2] ?? NaN;
    const inside = nx * x + ny * y + offset;
    if (inside < depth) depth = inside;
    if (inside >= reach) continue;
    met[size] = nx;
    met[size + 1] = ny;
    met[size + 2] = offset;
    size += 3;
  }
  return { depth, edges: met.slice(0, size) };
}
