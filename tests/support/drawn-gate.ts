/** Gates with waves of their own, parts that stand in them, and the rim points that sensors make of both, from these words alone. */
import { createRandom } from '../../core/numeric/random.ts';
import type { RimPoint } from '../../core/findings/outline/outline-model.ts';

/** Cosine and sine of the folds 2 to 8, shares of the radius. */
export type Waves = readonly (readonly [cosine: number, sine: number])[];

export interface DrawnPart {
  /** Where its upright stands from the middle of the gate, shares of the half travel, y up. */
  readonly seat: { readonly x: number; readonly y: number };
  /** Gains of right, left, up and down. */
  readonly gains: readonly [number, number, number, number];
}

export class GateDraw {
  readonly #random: ReturnType<typeof createRandom>;

  constructor(seed: number) {
    this.#random = createRandom(seed);
  }

  /** Standard normal. */
  normal(): number {
    return this.#random.normal();
  }

  waves(sigma = 0.003): Waves {
    return Array.from({ length: 7 }, () => [sigma * this.normal(), sigma * this.normal()] as const);
  }

  /** A part with a seat and sides of these spreads. */
  part(seat: number, side: number): DrawnPart {
    const gain = (): number => 1 + (side / 2) * this.normal() * Math.SQRT2;
    return {
      seat: { x: seat * this.normal(), y: seat * this.normal() },
      gains: [gain(), gain(), gain(), gain()],
    };
  }

  /** Every 5°, 1,250 counts of half travel, σ of a rim point in counts; y up, from the rest. */
  rim(waves: Waves, { seat, gains }: DrawnPart, sigma = 1): RimPoint[] {
    return Array.from({ length: 72 }, (_, step) => {
      const theta = (step * Math.PI) / 36;
      const radius = waves.reduce(
        (sum, [c, s], at) => sum + c * Math.cos((at + 2) * theta) + s * Math.sin((at + 2) * theta),
        1,
      );
      const [x, y] = [radius * Math.cos(theta) - seat.x, radius * Math.sin(theta) - seat.y];
      const [right, left, up, down] = gains;
      const dx = Math.round(1250 * x * (x >= 0 ? right : left) + sigma * this.normal());
      const dy = Math.round(1250 * y * (y >= 0 ? up : down) + sigma * this.normal());
      return { angle: 5 * step, dx, dy };
    });
  }
}

/** The same ring, turned by 180° in its shell. */
export function turnedRing(waves: Waves): Waves {
  return waves.map(([c, s], at) => (at % 2 === 1 ? [-c, -s] : [c, s]));
}
