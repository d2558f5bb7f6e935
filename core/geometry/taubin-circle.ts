import type { Circle } from './points.ts';

/**
 * Taubin's algebraic circle fit: least Σ(d² − R²)² / Σd² over centre and radius, d the distance from the centre.
 * Points must have their mean at the origin and size about 1 (`standardisePoints`). Without iteration over the points, close to
 * the geometric fit even on short arcs: the start of `fitCircle`. Null where the points lie on a line.
 * With z = x² + y² and M the mean products, the fit is the least root t of the characteristic cubic, found by Newton's
 * method from 0, where the cubic falls towards it; then the centre solves a 2 × 2 system.
 * Source: Taubin, IEEE PAMI 13 (1991) 1115; objective as on Chernov's circle-fit page.
 */
export function taubinCircle(points: Float64Array): Circle | null {
  const n = points.length / 2;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  let zz = 0;
  for (let i = 0; i < n; i += 1) {
    const x = points[2 * i] ?? NaN;
    const y = points[2 * i + 1] ?? NaN;
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z * z;
  }
  xx /= n;
  xy /= n;
  yy /= n;
  xz /= n;
  yz /= n;
  zz /= n;
  const z = xx + yy;
  const determinant = xx * yy - xy * xy;
  // Relative to the spread along the line this is rounding, not curvature.
  if (!(determinant > 1e-14 * z * z)) return null;
  const spread = zz - z * z;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const a1 = spread * z + 4 * determinant * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - spread * determinant;
  let root = 0;
  let value = a0;
  for (let round = 0; round < 99; round += 1) {
    const next = root - value / (a1 + root * (2 * a2 + 3 * a3 * root));
    if (!Number.isFinite(next) || next === root) break;
    const nextValue = a0 + next * (a1 + next * (a2 + next * a3));
    if (Math.abs(nextValue) >= Math.abs(value)) break;
    root = next;
    value = nextValue;
  }
  const below = root * root - root * z + determinant;
  const x = (xz * (yy - root) - yz * xy) / below / 2;
  const y = (yz * (xx - root) - xz * xy) / below / 2;
  const radius = Math.sqrt(x * x + y * y + z);
  return Number.isFinite(radius) ? { x, y, radius } : null;
}
