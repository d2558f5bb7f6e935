/** What a technician would lose by the verdicts: faulty parts that are kept, sound ones that are worked on in vain. */
import { isStickFaulty, isWorkedOn } from './demands.ts';
import { isSound, type Judged } from './judge-draw.ts';

export class Losses {
  #faulty = 0;
  #kept = 0;
  #sound = 0;
  #inVain = 0;

  /** Draws whose stick has a fault beyond its half-visible size, or sound ones; slips and faults of the pad alone are neither. */
  add(judged: readonly Judged[]): void {
    for (const one of judged) {
      if (isStickFaulty(one)) {
        this.#faulty += 1;
        if (one.verdict === 'keep') this.#kept += 1;
      } else if (isSound(one.wish)) {
        this.#sound += 1;
        if (isWorkedOn(one)) this.#inVain += 1;
      }
    }
  }

  lines(): string[] {
    return [
      `kept although faulty: ${thousandths(this.#kept, this.#faulty)}`,
      `reseated or replaced in vain: ${thousandths(this.#inVain, this.#sound)}`,
    ];
  }
}

function thousandths(found: number, of: number): string {
  return of === 0 ? 'none drawn' : `${((1000 * found) / of).toFixed(1)} of 1,000 (${found} of ${of})`;
}
