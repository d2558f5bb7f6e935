/** How often numbers stand in a whole image, and how often one follows another, by the way they are read. */
import { LANES, readNumber, type Lane } from './number-lanes.ts';

/** Both ends included. */
type NumberRange = readonly [low: number, high: number];

interface LaneCounts {
  /** As read at every byte, and beyond the last as 0. */
  readonly numbers: Uint16Array;
  /** How many numbers lie below an index. */
  readonly below: Float64Array;
  /** How many pairs of a number and the next lie in the cells before a row and a column. */
  readonly pairsBefore: Float64Array;
}

/** The next number of a record is asked for at the last byte too. */
const BEYOND = 2;
/** Cells of the table of pairs, in each direction; numbers above what is sought share a last one. */
const CELLS = 256;
const ROW = CELLS + 2;
/** So often the calibration itself shows what it is made of: two axes of two sticks in two layers. */
const OWN = 8;
/** So many numbers must have been seen before what follows them weighs as much as what numbers alone say. */
const DOUBT = 8;

export class NumberShares {
  readonly image: Uint8Array;
  readonly #cell: number;
  readonly #lanes: Readonly<Record<Lane, LaneCounts>>;

  /** `highest`: the largest number of the scale that is searched. */
  constructor(image: Uint8Array, highest: number) {
    this.image = image;
    this.#cell = (highest + 1) / CELLS;
    this.#lanes = {
      byte: this.#count('byte'),
      little: this.#count('little'),
      big: this.#count('big'),
      firstOfPair: this.#count('firstOfPair'),
      secondOfPair: this.#count('secondOfPair'),
    };
  }

  /** What a lane reads at every byte. */
  numbers(lane: Lane): Uint16Array {
    return this.#lanes[lane].numbers;
  }

  /**
   * Chance that a number, read at any byte, is in a range: as often as the image shows it, or even chances where these are more.
   * Memory is full of zeros, ones and small numbers; even chances stand for what fills a part of it evenly.
   */
  share(lane: Lane, low: number, high: number): number {
    const { numbers } = LANES[lane];
    const { below } = this.#lanes[lane];
    const from = Math.min(numbers, Math.max(0, Math.ceil(low)));
    const to = Math.min(numbers, Math.max(from, Math.floor(high) + 1));
    const seen = ((below[to] ?? 0) - (below[from] ?? 0)) / this.image.length;
    return Math.max(seen, (to - from) / numbers);
  }

  /** Chance that a number of `lane` in one range is followed by one in another; never less than the `share` of the second alone. */
  shareAfter(lane: Lane, one: NumberRange, next: NumberRange): number {
    const alone = this.share(LANES[lane].next, next[0], next[1]);
    const { pairsBefore } = this.#lanes[lane];
    const at = (row: number, column: number): number => pairsBefore[row * ROW + column] ?? 0;
    const [top, bottom] = [this.#cellOf(one[0]), this.#cellOf(one[1]) + 1];
    const [left, right] = [this.#cellOf(next[0]), this.#cellOf(next[1]) + 1];
    const both = at(bottom, right) - at(top, right) - at(bottom, left) + at(top, left);
    const ones = at(bottom, ROW - 1) - at(top, ROW - 1);
    const followed = (Math.max(0, both - OWN) + DOUBT * alone) / (Math.max(0, ones - OWN) + DOUBT);
    return Math.max(alone, Math.min(1, followed));
  }

  #cellOf(number: number): number {
    return Math.min(CELLS, Math.max(0, Math.floor(number / this.#cell)));
  }

  #count(lane: Lane): LaneCounts {
    const { numbers: most, step, next } = LANES[lane];
    const numbers = new Uint16Array(this.image.length + BEYOND);
    const below = new Float64Array(most + 1);
    const pairsBefore = new Float64Array(ROW * ROW);
    for (let at = 0; at < this.image.length; at += 1) {
      const number = readNumber(this.image, lane, at);
      numbers[at] = number;
      below[number + 1] = (below[number + 1] ?? 0) + 1;
      const index = (this.#cellOf(number) + 1) * ROW + this.#cellOf(readNumber(this.image, next, at + step)) + 1;
      pairsBefore[index] = (pairsBefore[index] ?? 0) + 1;
    }
    addUp(below, pairsBefore);
    return { numbers, below, pairsBefore };
  }
}

/** Counts become sums of all before them: in one direction, and in two. */
function addUp(below: Float64Array, pairsBefore: Float64Array): void {
  for (let number = 1; number < below.length; number += 1)
    below[number] = (below[number] ?? 0) + (below[number - 1] ?? 0);
  for (let at = ROW + 1; at < pairsBefore.length; at += 1) {
    if (at % ROW === 0) continue;
    const [left, above, both] = [pairsBefore[at - 1], pairsBefore[at - ROW], pairsBefore[at - ROW - 1]];
    pairsBefore[at] = (pairsBefore[at] ?? 0) + (left ?? 0) + (above ?? 0) - (both ?? 0);
  }
}
