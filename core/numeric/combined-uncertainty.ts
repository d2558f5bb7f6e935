/** A standard uncertainty, already times its sensitivity, with its degrees of freedom (infinite where it is taken as known). */
export interface UncertaintyPart {
  readonly value: number;
  readonly degrees: number;
}

/**
 * Combined standard uncertainty of independent parts, √Σu², in their unit, and its effective degrees of freedom by Welch and
 * Satterthwaite, u_c⁴ / Σ(u⁴/ν): not rounded; infinite where no part has finite ones.
 * Source: JCGM 100:2008, 5.1.2 and G.4.1.
 */
export function combineUncertainty(parts: readonly UncertaintyPart[]): UncertaintyPart {
  let squares = 0;
  for (const { value } of parts) squares += value * value;
  // Shares of the square, not fourth powers: those would leave the range of numbers first.
  let perDegree = 0;
  for (const { value, degrees } of parts) if (value !== 0) perDegree += ((value * value) / squares) ** 2 / degrees;
  return { value: Math.sqrt(squares), degrees: perDegree === 0 ? Infinity : 1 / perDegree };
}
