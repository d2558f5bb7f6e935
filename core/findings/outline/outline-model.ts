/** What a gate seen by the two sensors of a part looks like, turned round: from a rim point in counts back to the tilt. */
import { gateShape, type Sides } from './gate-shape.ts';

export interface RimPoint {
  /** Degrees. */
  readonly angle: number;
  /** Counts from the rest, y up. */
  readonly dx: number;
  readonly dy: number;
}

/** Order of the unknowns of the model before the waves. */
const unknowns = ['xPlus', 'xMinus', 'yPlus', 'yMinus', 'centreX', 'centreY', 'lean', 'bend'] as const;
/** Counts from the rest, of each side, at full tilt. */
export const SPANS = 4;
export type Unknown = (typeof unknowns)[number] | 'corner' | 'rounding';

/** Folds of the waves that a moulded gate has; the first is the gate's centre. */
const FIRST_FOLD = 2;
const LAST_FOLD = 8;
/** Cosine and sine of each fold. */
export const WAVES = 2 * (LAST_FOLD + 1 - FIRST_FOLD);
export const FIRST_WAVE = unknowns.length;
const CORNER = FIRST_WAVE + WAVES;
/** A round gate has no corners: the last two unknowns are left out. */
export const ROUND = CORNER;
export const SIDED = CORNER + 2;

export const unknownAt: Readonly<Record<Unknown, number>> = {
  xPlus: 0,
  xMinus: 1,
  yPlus: 2,
  yMinus: 3,
  centreX: 4,
  centreY: 5,
  lean: 6,
  bend: 7,
  corner: CORNER,
  rounding: CORNER + 1,
};

/** A rim point looked at under the model. */
export interface OutlinePoint {
  /** How far it lies outside of the gate, as a share of the gate's radius; 0 on it. */
  outside: number;
  /** ∂outside/∂ each wave. */
  readonly waveSlopes: Float64Array;
}

/**
 * The point (dx, dy) is in counts from the rest, y up. Each side of each axis has its span (counts at full tilt); bend β undoes
 * the sensor's law, t = r·(1 + β(1 − r²)) with r the share of the span; lean a = tan(σ/2) undoes a skew σ shared by both axes; the
 * gate's centre stands at (centreX, centreY), as tilts; its radius is the shape's (see `gateShape`), a corner standing at `corner`
 * radians, times 1 + Σ (c_k·cos kθ + s_k·sin kθ).
 */
export function lookAt(p: Float64Array, sides: Sides, dx: number, dy: number, into: OutlinePoint): void {
  const rx = dx / (dx >= 0 ? at(p, 0) : at(p, 1));
  const ry = dy / (dy >= 0 ? at(p, 2) : at(p, 3));
  const beta = at(p, 7);
  const tx = rx * (1 + beta * (1 - rx * rx));
  const ty = ry * (1 + beta * (1 - ry * ry));
  const lean = at(p, 6);
  const x = (tx - lean * ty) / (1 - lean * lean) - at(p, 4);
  const y = (ty - lean * tx) / (1 - lean * lean) - at(p, 5);
  const radius = Math.sqrt(x * x + y * y);
  const { waveSlopes } = into;
  // cos and sin of kθ, each from the one before.
  const [c1, s1] = [x / radius, y / radius];
  let [c, s] = [c1, s1];
  let wave = 1;
  for (let i = 0; i < WAVES; i += 2) {
    [c, s] = [c * c1 - s * s1, s * c1 + c * s1];
    waveSlopes[i] = c;
    waveSlopes[i + 1] = s;
    wave += at(p, FIRST_WAVE + i) * c + at(p, FIRST_WAVE + i + 1) * s;
  }
  const shape = sides === 0 ? 1 : gateShape(sides, at(p, CORNER + 1), Math.atan2(y, x) - at(p, CORNER));
  const share = radius / (shape * wave);
  into.outside = share - 1;
  for (let i = 0; i < WAVES; i += 1) waveSlopes[i] = (-share / wave) * (waveSlopes[i] ?? Number.NaN);
}

function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}
