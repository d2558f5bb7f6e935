import type { BandPoints } from './radial-band.ts';
import type { Column, Four } from './simplex-basis.ts';

/** A point that the band rests on, as a unit vector from the centre, with its distance. */
export interface Contact {
  readonly side: 'outer' | 'inner';
  readonly x: number;
  readonly y: number;
  readonly distance: number;
}

/** A column of the programme; those of edges and limits have no contact. */
export type BandColumn = Column<Contact | null>;

/** All that a centre's move is judged by, as seen from it: three numbers each. */
export interface LinearView {
  /** Unit vector towards the point, distance. */
  readonly outer: Float64Array;
  readonly inner: Float64Array;
  /** Inward unit normal of the edge, depth of the centre inside it (negative outside). */
  readonly edges: Float64Array;
}

export function viewFrom(points: BandPoints, edges: Float64Array, x: number, y: number): LinearView {
  const seen = edges.slice();
  for (let i = 0; i < seen.length; i += 3) {
    seen[i + 2] = (edges[i] ?? NaN) * x + (edges[i + 1] ?? NaN) * y + (edges[i + 2] ?? NaN);
  }
  return { outer: lookFrom(points.outer, x, y), inner: lookFrom(points.inner, x, y), edges: seen };
}

function lookFrom(points: Float64Array, x: number, y: number): Float64Array {
  const n = points.length / 2;
  const seen = new Float64Array(3 * n);
  for (let i = 0; i < n; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    const r = Math.sqrt(dx * dx + dy * dy);
    seen[3 * i] = r === 0 ? 0 : dx / r;
    seen[3 * i + 1] = r === 0 ? 0 : dy / r;
    seen[3 * i + 2] = r;
  }
  return seen;
}

/** Four columns to start from: the farthest point, and three limits r ≤ `level` − 2e·δ with e at 0°, 120°, 240°. */
export function startColumns(view: LinearView, level: number): [BandColumn, BandColumn, BandColumn, BandColumn] {
  const { outer } = view;
  let far = 0;
  for (let i = 3; i < outer.length; i += 3) if ((outer[i + 2] ?? NaN) > (outer[far + 2] ?? NaN)) far = i;
  // Without outer points the largest distance is 0 wherever the centre goes.
  const first: BandColumn =
    outer.length === 0 ? { earns: 0, uses: [1, 0, 0, 0], tag: null } : pointColumn('outer', outer, far);
  // Of length 2, the three surround every unit vector: the weights come out positive.
  const limit = (k: number): BandColumn => {
    const angle = (2 * Math.PI * k) / 3;
    return { earns: -level, uses: [0, 1, -2 * Math.cos(angle), -2 * Math.sin(angle)], tag: null };
  };
  return [first, limit(0), limit(1), limit(2)];
}

/** What the band (R, −r) after the move (x, y) leaves out by most: a point or an edge; null where it holds all to rounding. */
export function findWorst(view: LinearView, [radius, minusRadius, x, y]: Readonly<Four>): BandColumn | null {
  const { outer, inner, edges } = view;
  let worst = 1e-14;
  let side: 'outer' | 'inner' | 'edge' | null = null;
  let index = 0;
  for (let i = 0; i < outer.length; i += 3) {
    const over = (outer[i + 2] ?? NaN) - (outer[i] ?? NaN) * x - (outer[i + 1] ?? NaN) * y - radius;
    if (over <= worst) continue;
    worst = over;
    side = 'outer';
    index = i;
  }
  for (let i = 0; i < inner.length; i += 3) {
    const under = (inner[i] ?? NaN) * x + (inner[i + 1] ?? NaN) * y - (inner[i + 2] ?? NaN) - minusRadius;
    if (under <= worst) continue;
    worst = under;
    side = 'inner';
    index = i;
  }
  for (let i = 0; i < edges.length; i += 3) {
    const beyond = -(edges[i] ?? NaN) * x - (edges[i + 1] ?? NaN) * y - (edges[i + 2] ?? NaN);
    if (beyond <= worst) continue;
    worst = beyond;
    side = 'edge';
    index = i;
  }
  if (side === null) return null;
  return side === 'edge' ? edgeColumn(edges, index) : pointColumn(side, view[side], index);
}

function pointColumn(side: 'outer' | 'inner', seen: Float64Array, i: number): BandColumn {
  const [x = NaN, y = NaN, distance = NaN] = seen.subarray(i, i + 3);
  const tag: Contact = { side, x, y, distance };
  return side === 'outer'
    ? { earns: distance, uses: [1, 0, x, y], tag }
    : { earns: -distance, uses: [0, 1, -x, -y], tag };
}

function edgeColumn(edges: Float64Array, i: number): BandColumn {
  const [x = NaN, y = NaN, depth = NaN] = edges.subarray(i, i + 3);
  return { earns: -depth, uses: [0, 0, x, y], tag: null };
}

/** Shorter views are gone through as they are. */
const longView = 6000;
/** Every so many-th point of a long view: enough to come near its answer. */
const sampleEvery = 64;

/** Some of the points, all round, and all edges: the programme is solved among them first. Null where the view is short. */
export function sampleOf({ outer, inner, edges }: LinearView): LinearView | null {
  if (outer.length + inner.length < 3 * longView) return null;
  return { outer: everyPoint(outer), inner: everyPoint(inner), edges };
}

function everyPoint(seen: Float64Array): Float64Array {
  const sample = new Float64Array(3 * Math.ceil(seen.length / 3 / sampleEvery));
  for (let i = 0, k = 0; i < seen.length; i += 3 * sampleEvery, k += 3) sample.set(seen.subarray(i, i + 3), k);
  return sample;
}
