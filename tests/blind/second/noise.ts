/** Noise of a sensor and its converter: white, and a part whose power falls with frequency. */
import type { Chance } from './chance.ts';
import type { NoiseOf } from './part.ts';

/** Wandering values with these time constants, equally strong, add up to about 1/f between 0.02 and 30 Hz. */
const SECONDS = [0.005, 0.05, 0.5, 5];

export class Noise {
  readonly #of: NoiseOf;
  readonly #chance: Chance;
  readonly #wander = SECONDS.map(() => 0);

  constructor(of: NoiseOf, chance: Chance) {
    this.#of = of;
    this.#chance = chance;
    this.#wander = SECONDS.map(() => chance.normal());
  }

  /** Counts of 12 bits, so many seconds after the last call. */
  after(seconds: number): number {
    const { white, slow } = this.#of;
    let sum = 0;
    for (const [index, constant] of SECONDS.entries()) {
      const kept = Math.exp(-seconds / constant);
      const value = kept * (this.#wander[index] ?? 0) + Math.sqrt(1 - kept * kept) * this.#chance.normal();
      this.#wander[index] = value;
      sum += value;
    }
    return white * (this.#chance.normal() + (slow * sum) / Math.sqrt(SECONDS.length));
  }
}
