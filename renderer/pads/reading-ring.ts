/** The last readings of a pad in typed columns that are overwritten in a circle. No allocation while readings stream in. */
import type { ReadingSlot } from '../../core/pad/layout.ts';

/** Columns of a reading: leftX, leftY, rightX, rightY, left trigger, right trigger. */
export const COLUMNS = 6;

export class ReadingRing {
  readonly capacity: number;
  /** Microseconds of the bench's clock; slot of the n-th reading is n % capacity. */
  readonly t: Float64Array;
  readonly columns: readonly Float64Array[];
  /** Readings ever taken; the newest is number `taken − 1`. */
  taken = 0;

  constructor(capacity: number) {
    this.capacity = capacity;
    this.t = new Float64Array(capacity);
    this.columns = Array.from({ length: COLUMNS }, () => new Float64Array(capacity));
  }

  take(t: number, slot: ReadingSlot): void {
    const at = this.taken % this.capacity;
    this.t[at] = t;
    for (let column = 0; column < COLUMNS; column += 1) {
      const value = column < 4 ? slot.axes[column] : slot.triggers[column - 4];
      const values = this.columns[column];
      if (values !== undefined) values[at] = value ?? Number.NaN;
    }
    this.taken += 1;
  }

  /** Number of the oldest reading that is still held. */
  get oldest(): number {
    return Math.max(0, this.taken - this.capacity);
  }

  timeOf(reading: number): number {
    return this.t[reading % this.capacity] ?? Number.NaN;
  }

  /** Time of the newest reading; NaN while there is none. */
  get newestTime(): number {
    return this.taken === 0 ? Number.NaN : this.timeOf(this.taken - 1);
  }

  /** The newest value of a column; NaN while there is none or the pad has no such control. */
  newest(column: number): number {
    return this.taken === 0 ? Number.NaN : this.valueOf(this.taken - 1, column);
  }

  valueOf(reading: number, column: number): number {
    return this.columns[column]?.[reading % this.capacity] ?? Number.NaN;
  }

  /** Number of the first held reading that is not older than `time` (binary search). */
  firstSince(time: number): number {
    let low = this.oldest;
    let high = this.taken;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (this.timeOf(middle) < time) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /**
   * Writes a column since `from` in time order to `t` and `v` (room for the capacity, the gaps and one more), holds the
   * newest value until `until`, and writes NaN between the readings to both sides of a gap, so that a line drawn through
   * them breaks there and neither is lost. Answers with the number written.
   */
  unroll(
    column: number,
    from: number,
    until: number,
    gaps: readonly number[],
    t: Float64Array,
    v: Float64Array,
  ): number {
    const first = Math.max(this.oldest, this.firstSince(from) - 1);
    let gap = 0;
    let written = 0;
    for (let reading = first; reading < this.taken; reading += 1) {
      const time = this.timeOf(reading);
      let broken = false;
      while ((gaps[gap] ?? Number.POSITIVE_INFINITY) <= time) {
        broken = broken || reading > first;
        gap += 1;
      }
      if (broken) {
        // At the time of the reading before, so that thinning keeps the break before the reading after.
        t[written] = t[written - 1] ?? from;
        v[written] = Number.NaN;
        written += 1;
      }
      t[written] = Math.max(from, time);
      v[written] = this.valueOf(reading, column);
      written += 1;
    }
    if (written === 0 || this.newestTime >= until) return written;
    t[written] = until;
    v[written] = this.newest(column);
    return written + 1;
  }
}
