import { type Circle, standardisePoints } from './points.ts';
import { taubinCircle } from './taubin-circle.ts';

/** Beyond this many times the points' own size a circle is a line as far as the points can tell. */
const straight = 1e6;

/**
 * Least-squares circle: the centre and radius with the least sum of squared radial distances Σ(rᵢ − R)², in the unit of the points.
 * (Reference circle LSCI of ISO 12181-1; the geometric fit, not an algebraic one.) From Taubin's fit, Newton's method with
 * a damping that falls away near the minimum (Levenberg and Marquardt), R eliminated as the mean distance; to the last digits.
 * Null with fewer than three distinct points, or where they lie so nearly on a line that the radius runs away.
 * Checked against the NIST Algorithm Testing System's reference circles.
 */
export function fitCircle(points: ArrayLike<number>): Circle | null {
  const standard = standardisePoints(points);
  if (standard === null) return null;
  const start = taubinCircle(standard.points);
  if (start === null) return null;
  let here = judge(standard.points, start.x, start.y);
  let damping = 1e-3;
  for (let round = 0; round < 200; round += 1) {
    const step = newtonStep(here, damping);
    const next = judge(standard.points, here.x + step.x, here.y + step.y);
    if (Math.hypot(next.x, next.y) > straight) return null;
    if (next.squares < here.squares) {
      here = next;
      damping /= 10;
    } else {
      // At the bottom only rounding is left: the slope is then the finer judge.
      if (next.slope < here.slope && next.squares <= here.squares * (1 + 1e-12)) here = next;
      if (Math.hypot(step.x, step.y) < 1e-15 * Math.max(1, here.radius)) break;
      damping = Math.max(damping, 1e-12) * 10;
    }
  }
  const { x, y, scale } = standard;
  return { x: x + scale * here.x, y: y + scale * here.y, radius: scale * here.radius };
}

/** The sum to be least at one centre, with half its gradient and half its Hessian, all over n. */
interface Judged {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly squares: number;
  readonly gx: number;
  readonly gy: number;
  readonly slope: number;
  readonly hxx: number;
  readonly hxy: number;
  readonly hyy: number;
}

/**
 * With r̄ the mean distance and u the unit vectors from the centre, F = Σ(r − r̄)² has half the gradient −Σ(r − r̄)u and half the
 * Hessian n·1 − n·ūūᵀ − r̄ Σ(1 − uuᵀ)/r.
 */
function judge(points: Float64Array, x: number, y: number): Judged {
  const n = points.length / 2;
  let sum = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    sum += Math.sqrt(dx * dx + dy * dy);
  }
  const radius = sum / n;
  let squares = 0;
  let ux = 0;
  let uy = 0;
  let gx = 0;
  let gy = 0;
  let cxx = 0;
  let cxy = 0;
  let cyy = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    const r = Math.sqrt(dx * dx + dy * dy);
    if (r === 0) {
      squares += radius * radius;
      continue;
    }
    const a = dx / r;
    const b = dy / r;
    const off = r - radius;
    squares += off * off;
    ux += a;
    uy += b;
    gx -= off * a;
    gy -= off * b;
    cxx += (b * b) / r;
    cxy -= (a * b) / r;
    cyy += (a * a) / r;
  }
  return {
    x,
    y,
    radius,
    squares: squares / n,
    gx: gx / n,
    gy: gy / n,
    slope: Math.hypot(gx, gy) / n,
    hxx: 1 - (ux / n) ** 2 - (radius * cxx) / n,
    hxy: (-ux * uy) / (n * n) - (radius * cxy) / n,
    hyy: 1 - (uy / n) ** 2 - (radius * cyy) / n,
  };
}

/** Newton's step with the Hessian's eigenvalues lifted until both are positive, and by the damping. */
function newtonStep(at: Judged, damping: number): { x: number; y: number } {
  const middle = (at.hxx + at.hyy) / 2;
  const least = middle - Math.hypot((at.hxx - at.hyy) / 2, at.hxy);
  const lift = (least > 0 ? 0 : 1e-3 - least) + damping * Math.abs(middle);
  const xx = at.hxx + lift;
  const yy = at.hyy + lift;
  const determinant = xx * yy - at.hxy * at.hxy;
  return {
    x: -(yy * at.gx - at.hxy * at.gy) / determinant,
    y: -(xx * at.gy - at.hxy * at.gx) / determinant,
  };
}
