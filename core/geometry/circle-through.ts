import type { Circle } from './points.ts';

/** Circle with the two points as the ends of a diameter. */
export function circleOnDiameter(ax: number, ay: number, bx: number, by: number): Circle {
  return { x: ax + (bx - ax) / 2, y: ay + (by - ay) / 2, radius: Math.hypot(bx - ax, by - ay) / 2 };
}

/** Circle through three points; null where they lie on a line, by exact zero or beyond the range of numbers. */
export function circleThrough(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): Circle | null {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - ax;
  const vy = cy - ay;
  const twice = 2 * (ux * vy - uy * vx);
  const u = ux * ux + uy * uy;
  const v = vx * vx + vy * vy;
  const x = (vy * u - uy * v) / twice;
  const y = (ux * v - vx * u) / twice;
  const radius = Math.hypot(x, y);
  return Number.isFinite(radius) ? { x: ax + x, y: ay + y, radius } : null;
}
