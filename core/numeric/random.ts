/** The one source of chance in core: always seeded, never the machine's own. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';

/** Four 32-bit words and the normal deviate in hand: plain JSON, from which `createRandom` goes on exactly. */
export interface RandomState {
  readonly words: readonly number[];
  readonly spare: number | null;
}

/** A stream of pseudo-random numbers; equal seeds give equal streams on every machine. */
export interface Random {
  /** Uniform in [0, 1), 53 random bits. */
  next(): number;
  /** Standard normal (mean 0, σ 1) by Marsaglia's polar method; each pair of uniforms gives two deviates. */
  normal(): number;
  /** Uniform whole number from `from` to `to`, both included. */
  integer(from: number, to: number): number;
  state(): RandomState;
}

/**
 * Starts a stream (xoroshiro128+ of pure-rand) from a whole-number seed, or goes on from a saved state.
 * The seed is mixed into the generator's 128 bits (SplitMix32, finaliser constants of MurmurHash3), because neighbouring
 * seeds would otherwise begin with almost equal numbers.
 * Source of the polar method: Marsaglia and Bray, SIAM Review 6 (1964) 260 (from memory).
 */
export function createRandom(from: number | RandomState): Random {
  const generator = xoroshiro128plusFromState(typeof from === 'number' ? mixSeed(from) : from.words);
  let spare = typeof from === 'number' ? null : from.spare;
  const next = (): number => uniformFloat64(generator);
  return {
    next,
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      for (;;) {
        const u = 2 * next() - 1;
        const v = 2 * next() - 1;
        const square = u * u + v * v;
        if (square >= 1 || square === 0) continue;
        const scale = Math.sqrt((-2 * Math.log(square)) / square);
        spare = v * scale;
        return u * scale;
      }
    },
    integer: (least, greatest) => uniformInt(generator, least, greatest),
    state: () => ({ words: generator.getState(), spare }),
  };
}

function mixSeed(seed: number): number[] {
  let sum = seed | 0;
  return Array.from({ length: 4 }, () => {
    sum = (sum + 0x9e3779b9) | 0;
    let word = Math.imul(sum ^ (sum >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return word ^ (word >>> 16);
  });
}
