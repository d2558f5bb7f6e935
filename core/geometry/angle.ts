/** Degrees counter-clockwise from +x in [0, 360) of the vector (x, y), y up. 0 for the null vector. */
export function angleOf(x: number, y: number): number {
  return wrapDegrees((Math.atan2(y, x) * 180) / Math.PI);
}

/** The same angle in [0, 360). */
export function wrapDegrees(angle: number): number {
  const rest = angle % 360;
  const wrapped = rest < 0 ? rest + 360 : rest;
  // A tiny negative angle rounds up to 360 itself; −0 becomes 0.
  return wrapped >= 360 ? 0 : wrapped + 0;
}
