/** Points in a row as SVG path data. */

/**
 * Path data of a polyline; `points` holds x and y in turn, in picture units. A point that is not finite lifts the pen,
 * so a direction without a value stays a gap. `close` joins the end to the start, only where the pen was never lifted.
 */
export function polylinePath(points: ArrayLike<number>, close = false): string {
  const parts: string[] = [];
  let down = false;
  let lifted = false;
  for (let at = 0; at + 1 < points.length; at += 2) {
    const x = points[at] ?? Number.NaN;
    const y = points[at + 1] ?? Number.NaN;
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      down = false;
      lifted = true;
      continue;
    }
    parts.push(`${down ? 'L' : 'M'}${shortNumber(x)} ${shortNumber(y)}`);
    down = true;
  }
  return parts.join('') + (close && !lifted && parts.length > 0 ? 'Z' : '');
}

/** A picture coordinate to a hundredth of a unit, without trailing zeros and without −0. */
export function shortNumber(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}
