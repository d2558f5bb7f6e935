/** All that a run of the second blind test keeps of its draws. */
import type { FaultRun } from '../confusion-table.ts';
import type { Miss } from '../miss.ts';
import type { Cell } from './cells.ts';
import type { Judged } from './judge-draw.ts';
import { Losses } from './losses.ts';
import type { Drawn, Pool } from './pools.ts';
import { EVERY_PAD } from './not-gated.ts';
import { Reasons } from './reasons.ts';
import { missesOf, resultOf, type Result } from './result.ts';
import { togetherOf } from './together.ts';

export class Ledger {
  readonly results: Result[] = [];
  readonly losses = new Losses();
  /** Why verdicts were given on sound sticks, and after slips. */
  readonly reasons = { sound: new Reasons(), slip: new Reasons() };
  /** What was named first, by kind of pad. */
  readonly confusion = new Map<string, FaultRun[]>();

  /** A group of cells with the draws of each. */
  add(group: readonly Drawn[]): Result[] {
    const results = group.map(([cell, judged]) => {
      this.losses.add(judged);
      if (cell.part === 'sound' || cell.part === 'slip') this.reasons[cell.part].add(judged);
      if (cell.part === 'far' || cell.part === 'whole') this.#confuse(cell, judged);
      return resultOf(cell, judged);
    });
    this.results.push(...results);
    return results;
  }

  addPools(pools: readonly Pool[]): Result[] {
    const results = pools.map((pool) => resultOf(pool, pool.judged));
    this.results.push(...results);
    return results;
  }

  /** What all cells of one part come to together, once all are added. */
  addTogether(): Result[] {
    const results = togetherOf(this.results.filter(({ pad }) => pad !== EVERY_PAD));
    this.results.push(...results);
    return results;
  }

  get misses(): Miss[] {
    return this.results.flatMap(missesOf);
  }

  #confuse({ name, pad }: Cell, judged: readonly Judged[]): void {
    const runs = this.confusion.get(pad) ?? [];
    const answers = judged.map(({ failed }) => ({ named: failed.slice(0, 1) }));
    this.confusion.set(pad, [...runs, { fault: name, answers }]);
  }
}
