/** Where numbers like those of one stick stand around it: tables, waves, readings and records repeat. */
import type { Layout, LayoutNumber } from './finder-layouts.ts';
import type { Sought } from './finder-targets.ts';
import { LANES } from './number-lanes.ts';
import type { NumberShares } from './number-shares.ts';
import { soughtNumber } from './sought-numbers.ts';

/** Where one or two sticks stand; the bytes between them are not theirs. */
export interface Stand {
  readonly start: number;
  readonly between: { readonly from: number; readonly to: number };
  readonly end: number;
}

/** How far it is looked around a stand, bytes; a short table is seen in the first, a long list of records in the last. */
export const REACHES = [64, 128, 256, 512];

/** Bytes around a stand: before, between and behind the sticks. */
interface Stretch extends Stand {
  readonly low: number;
  readonly high: number;
}

/** How many bytes of an image of so many are within reach of a stand. */
export function bytesAround(stand: Stand, reach: number, bytes: number): number {
  return sizeOf(stretchAround(stand, reach, bytes));
}

function sizeOf({ low, start, between, end, high }: Stretch): number {
  return start - low + between.to - between.from + high - end;
}

function stretchAround(stand: Stand, reach: number, bytes: number): Stretch {
  return { ...stand, low: Math.max(0, stand.start - reach), high: Math.min(bytes, stand.end + reach) };
}

/** So many numbers must have been seen before they weigh as much as the whole image. */
const DOUBT = 4;

/** Of each number of a stick: where one in its range stands, and where a step leads into its range from the number before it. */
const KINDS = 12;
/** More than a stick and the farthest one beside it, bytes: it is looked so much further at once, for the next pair will ask for it. */
const AHEAD = 80;

/** Looked for when first asked for and kept: one stick is weighed in hundreds of pairs where a record repeats. */
export class NearbyNumbers {
  readonly #layout: Layout;
  readonly #sought: Sought;
  readonly #offset: number;
  readonly #furthest: number;
  readonly #shares: NumberShares;
  /** Bytes that were looked at. */
  #from: number;
  #to: number;
  /** A byte and a kind in one number, for there are hundreds of thousands. */
  readonly #seen: number[] = [];
  /** The last stand that was asked for, with the chances around it by the round of the reach. */
  #stand: Stand | null = null;
  #chances: (number | undefined)[] = [];

  constructor(layout: Layout, sought: Sought, offset: number, furthest: number, shares: NumberShares) {
    this.#layout = layout;
    this.#sought = sought;
    this.#offset = offset;
    this.#furthest = furthest;
    this.#shares = shares;
    this.#from = offset;
    this.#to = offset;
  }

  /**
   * Chance at any one byte within a reach of a stand that all six numbers stand there: each is as likely as such numbers stand there,
   * or as steps there lead to it, whichever is more.
   */
  chance(stand: Stand, round: number): number {
    if (this.#stand !== stand && (this.#stand === null || !isSame(this.#stand, stand))) this.#chances = [];
    this.#stand = stand;
    return (this.#chances[round] ??= this.#chanceIn(
      stretchAround(stand, REACHES[round] ?? 0, this.#shares.image.length),
    ));
  }

  #chanceIn(stretch: Stretch): number {
    if (stretch.low < this.#from || stretch.high > this.#to) this.#look(stretch.low - AHEAD, stretch.high + AHEAD);
    const counts = this.#countIn(stretch);
    const bytes = sizeOf(stretch);
    let chance = 1;
    for (const [index, number] of this.#layout.numbers.entries()) {
      const { low, high } = this.#range(number);
      const seen = Math.max(counts[2 * index] ?? 0, counts[2 * index + 1] ?? 0);
      chance *= (seen + DOUBT * this.#shares.share(number.lane, low, high)) / (bytes + DOUBT);
    }
    return chance;
  }

  #range(number: LayoutNumber): { readonly low: number; readonly high: number } {
    const wanted = soughtNumber(this.#layout, number, this.#sought);
    return { low: wanted - this.#furthest, high: wanted + this.#furthest };
  }

  #countIn({ low, start, between, end, high }: Stretch): Int32Array {
    const counts = new Int32Array(KINDS);
    for (const code of this.#seen) {
      const at = Math.floor(code / KINDS);
      if ((at < low || at >= start) && (at < between.from || at >= between.to) && (at < end || at >= high)) continue;
      const kind = code % KINDS;
      counts[kind] = (counts[kind] ?? 0) + 1;
    }
    return counts;
  }

  /** Only what was not looked at before. */
  #look(low: number, high: number): void {
    const [from, to] = [Math.max(0, low), Math.min(this.#shares.image.length, high)];
    for (const [index, number] of this.#layout.numbers.entries()) {
      this.#lookFor(number, index, from, Math.min(to, this.#from));
      this.#lookFor(number, index, Math.max(from, this.#to), to);
    }
    this.#from = Math.min(from, this.#from);
    this.#to = Math.max(to, this.#to);
  }

  #lookFor(number: LayoutNumber, index: number, from: number, to: number): void {
    const { low, high } = this.#range(number);
    const numbers = this.#shares.numbers(number.lane);
    const seen = this.#seen;
    for (let at = from; at < to; at += 1) {
      const read = numbers[at] ?? 0;
      if (read >= low && read <= high) seen.push(at * KINDS + 2 * index);
    }
    const last = this.#layout.numbers[index - 1];
    if (last === undefined) return;
    const ones = this.#shares.numbers(last.lane);
    const before = ones[this.#offset + last.at] ?? 0;
    const { step } = LANES[last.lane];
    for (let at = from; at < to; at += 1) {
      const next = before + (numbers[at + step] ?? 0) - (ones[at] ?? 0);
      if (next >= low && next <= high) seen.push(at * KINDS + 2 * index + 1);
    }
  }
}

function isSame(one: Stand, other: Stand): boolean {
  return (
    one.start === other.start &&
    one.end === other.end &&
    one.between.from === other.between.from &&
    one.between.to === other.between.to
  );
}
