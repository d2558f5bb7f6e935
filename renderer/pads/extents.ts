/** Least and greatest count of each column seen since the pad was opened or the extents were started again. */
import type { ReadingSlot } from '../../core/pad/layout.ts';
import { COLUMNS } from './reading-ring.ts';

export class Extents {
  readonly least = new Float64Array(COLUMNS).fill(Number.NaN);
  readonly greatest = new Float64Array(COLUMNS).fill(Number.NaN);

  take(slot: ReadingSlot): void {
    for (let column = 0; column < COLUMNS; column += 1) {
      const value = (column < 4 ? slot.axes[column] : slot.triggers[column - 4]) ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      const least = this.least[column] ?? Number.NaN;
      const greatest = this.greatest[column] ?? Number.NaN;
      if (!(value >= least)) this.least[column] = value;
      if (!(value <= greatest)) this.greatest[column] = value;
    }
  }

  startAgain(): void {
    this.least.fill(Number.NaN);
    this.greatest.fill(Number.NaN);
  }
}
