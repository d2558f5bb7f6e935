/** The radius of a gate with straight sides and rounded corners. */

/** Sides of the gates that are told apart; 0 is a round one. */
export type Sides = 0 | 4 | 6 | 8;

/**
 * Distance from the middle to the edge, `angle` radians from a corner; corners lie at 1. Each corner is rounded by a circle of
 * radius ρ in [0, 1), so that the sides stand at a = (1 − ρ)·cos(π/n) + ρ and 1 is a circle. Along a side the radius is a/cos φ,
 * φ from its middle; at a corner it is d·cos ψ + √(ρ² − d²·sin²ψ), ψ from the corner, d = 1 − ρ where the corner's circle stands.
 */
export function gateShape(sides: Sides, rounding: number, angle: number): number {
  if (sides === 0) return 1;
  const half = Math.PI / sides;
  const rho = Math.min(Math.max(rounding, 0), MOST_ROUNDING);
  const psi = Math.abs(angle - 2 * half * Math.round(angle / (2 * half)));
  const d = 1 - rho;
  const a = d * Math.cos(half) + rho;
  const phi = half - psi;
  if (a * Math.tan(phi) <= d * Math.sin(half)) return a / Math.cos(phi);
  return d * Math.cos(psi) + Math.sqrt(Math.max(0, rho * rho - (d * Math.sin(psi)) ** 2));
}

/** With more the corners are gone. */
const MOST_ROUNDING = 0.98;
