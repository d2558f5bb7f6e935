/** The draws of the first edition: each with a seed of its own, by a running number. */
import { createChance } from '../../core/simulate/chance.ts';
import type { UnitWish } from '../../core/simulate/draw-unit.ts';
import type { FaultName } from '../../core/simulate/faults.ts';
import type { Crew } from './crew.ts';
import type { Count } from './exact-share.ts';
import type { BlindAnswer, BlindCase } from './judge-unit.ts';
import { blindFaults, curveSizes } from './sizes.ts';

export class FirstDraws {
  readonly #crew: Crew<BlindCase, BlindAnswer>;
  readonly #seed: number;
  #nextSeed: number;

  constructor(crew: Crew<BlindCase, BlindAnswer>, seed: number) {
    this.#crew = crew;
    this.#seed = seed;
    this.#nextSeed = seed * 1_000_000;
  }

  judge(faults: readonly BlindCase['faults'][], wish: UnitWish = {}): Promise<BlindAnswer[]> {
    const cases = faults.map((each) => {
      this.#nextSeed += 1;
      return { seed: this.#nextSeed, faults: each, wish };
    });
    return this.#crew.answer(cases);
  }

  healthy(count: number, wish?: UnitWish): Promise<BlindAnswer[]> {
    return this.judge(
      Array.from({ length: count }, () => []),
      wish,
    );
  }

  /** 1.5 to 4 times the size that is just visible. */
  ofFault(fault: FaultName, size: number, count: number, wish?: UnitWish): Promise<BlindAnswer[]> {
    const one = this.sizes(fault, size);
    return this.judge(
      Array.from({ length: count }, () => [one()]),
      wish,
    );
  }

  async atSize(fault: FaultName, size: number, count: number): Promise<Count> {
    const answers = await this.judge(Array.from({ length: count }, () => [{ fault, size }]));
    return { found: this.found(answers, fault), of: answers.length };
  }

  /** In how many the fault is the first or second that is named. */
  found(answers: readonly BlindAnswer[], fault: FaultName): number {
    return answers.filter(({ named }) => named.slice(0, 2).includes(fault)).length;
  }

  /** A size of noise counts from 1, which is none: "times" is times the healthy noise itself. */
  sizes(fault: FaultName, size: number): () => BlindCase['faults'][number] {
    const chance = createChance(this.#seed, blindFaults.indexOf(fault));
    if (curveSizes[fault] === null) return () => ({ fault, size: 1 });
    return () => ({ fault, size: size * 1.5 * (4 / 1.5) ** chance.next() });
  }
}
