/** Seeded chance of the simulated pad: the same seed and stream give the same numbers for ever. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Chance {
  /** Uniform in [0, 1). */
  next(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * Independent streams of one seed keep the parts of a pad apart: what the hand does never changes the sensors' noise.
 * Normal numbers by the method of Box and Muller (Annals of Mathematical Statistics 29, 1958).
 */
export function createChance(seed: number, stream: number): Chance {
  // Neighbouring seeds of a shift-register generator begin alike; multiplying spreads them, the skip lets them part.
  const generator = xoroshiro128plus(Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul(stream + 1, 0x85ebca6b));
  for (let skipped = 0; skipped < 16; skipped += 1) generator.next();
  let spare: number | null = null;
  return {
    next: () => uniformFloat64(generator),
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniformFloat64(generator)));
      const turn = 2 * Math.PI * uniformFloat64(generator);
      spare = radius * Math.sin(turn);
      return radius * Math.cos(turn);
    },
  };
}
