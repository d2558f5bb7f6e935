/** Skew: how far the two axes of a stick are from being perpendicular. */
import type { RimShape } from '../capture/evidence/evidence.ts';

/**
 * Degrees, from the ellipse of all rim readings. A round gate seen by two axes of gains g_x, g_y that stand at 90° − σ
 * to each other fills an ellipse of the shape [[g_x², g_x·g_y·sin σ], [·, g_y²]]; so σ = asin(m_xy/√(m_xx·m_yy)) of the
 * ellipse's matrix m = R·diag(a², b²)·Rᵀ, R the turn by its angle. Unequal gains and a turned part on a round gate leave
 * it 0. Positive where +x and +y lean toward each other. Null without an ellipse.
 */
export function skewOf(ellipse: RimShape['ellipse']): number | null {
  if (ellipse === null) return null;
  const turn = (ellipse.angle * Math.PI) / 180;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const a2 = ellipse.a ** 2;
  const b2 = ellipse.b ** 2;
  const xx = a2 * cos * cos + b2 * sin * sin;
  const yy = a2 * sin * sin + b2 * cos * cos;
  const xy = (a2 - b2) * sin * cos;
  if (xx <= 0 || yy <= 0) return null;
  return (Math.asin(Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy)))) * 180) / Math.PI;
}
