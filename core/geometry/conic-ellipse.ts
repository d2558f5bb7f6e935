/** An ellipse: centre and semi-axes a ≥ b in the unit of the points. */
export interface Ellipse {
  readonly x: number;
  readonly y: number;
  readonly a: number;
  readonly b: number;
  /** Of the major axis, degrees counter-clockwise from +x (y up), in [0, 180); without meaning where a = b. */
  readonly angle: number;
}

/**
 * Centre, semi-axes and angle of the ellipse Ax² + Bxy + Cy² + Dx + Ey + F = 0.
 * Null where the conic is no real ellipse.
 */
export function conicEllipse(A: number, B: number, C: number, D: number, E: number, F: number): Ellipse | null {
  const determinant = 4 * A * C - B * B;
  if (!(determinant > 0)) return null;
  const x = (B * E - 2 * C * D) / determinant;
  const y = (B * D - 2 * A * E) / determinant;
  const level = -(F + (D * x + E * y) / 2);
  // Eigenvalues of the quadratic part; the lesser one from the determinant, where a difference would lose digits.
  const greater = (Math.abs(A + C) + Math.hypot(A - C, B)) / 2;
  const lesser = determinant / 4 / greater;
  const sign = Math.sign(A + C);
  const a = Math.sqrt((sign * level) / lesser);
  const b = Math.sqrt((sign * level) / greater);
  if (!(Number.isFinite(a) && b > 0)) return null;
  const degrees = (Math.atan2(-sign * B, sign * (C - A)) * 90) / Math.PI;
  const angle = degrees < 0 ? degrees + 180 : degrees;
  return { x, y, a, b, angle: angle >= 180 ? 0 : angle + 0 };
}
