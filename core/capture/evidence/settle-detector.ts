/** Tells when a stick is settled, reading by reading, the same live and in a log. */
import { RunningNoise } from './running-noise.ts';
import type { AxisField, Pair, StickFields } from '../../pad/stick.ts';

/** The signal is averaged over whole cells of this length, on a grid fixed to the log's start. */
const CELL_US = 10_000;
/** Cells in each of the two means that are compared: 100 ms. */
const CELLS = 10;
/** The mean of 100 ms against the 100 ms before. */
const MEAN_US = CELLS * CELL_US;

/** So many σ of the difference of two means are noise, up to so many times the limit itself. */
const NOISES = 4;
const MOST_LIMITS = 10;

/** What is told as it happens; times are microseconds. */
interface SettleListener {
  /** Settled as seen at this instant, the end of the two means. */
  settled(atUs: number): void;
  /** No longer settled; the last 100 ms, in which it moved, do not belong to the settled stretch. */
  moved(settledToUs: number): void;
}

/**
 * Settled: the mean of 100 ms moves by at most max(1 count, 0.05 % of the field's range, what noise makes of it) against the mean of the
 * 100 ms before (noise: 4·σ·√(2/n), σ and the n readings of 100 ms from the latest ones, and never more than 0.5 % of the range), on both axes, and no button was down in either. A reading holds until the next, so that a pad that
 * reports only changes is weighed by time, and a silent pad stands still. Judged every 10 ms of the log's own time:
 * how often `advance` is called changes nothing.
 */
export class SettleDetector {
  readonly #listener: SettleListener;
  readonly #xLimit: number;
  readonly #yLimit: number;
  /** Integrals of count × µs over the last 20 whole cells, newest at `#newest`. */
  readonly #xCells = new Float64Array(2 * CELLS);
  readonly #yCells = new Float64Array(2 * CELLS);
  #newest = 0;
  /** Whole cells since the last break; more than 20 count as 20. */
  #whole = 0;
  #cell = 0;
  #xInCell = 0;
  #yInCell = 0;
  #now = Number.NaN;
  #x = Number.NaN;
  #y = Number.NaN;
  #down = false;
  #settled = false;
  readonly #noise: Readonly<Record<'x' | 'y', RunningNoise>>;

  constructor(fields: StickFields, listener: SettleListener) {
    this.#xLimit = settleLimit(fields.x);
    this.#yLimit = settleLimit(fields.y);
    this.#listener = listener;
    this.#noise = { x: new RunningNoise(), y: new RunningNoise() };
  }

  get isSettled(): boolean {
    return this.#settled;
  }

  /** How far the mean of 100 ms moved against the one before, in counts; null before there are two means. */
  get movement(): Pair | null {
    return this.#whole < 2 * CELLS ? null : { x: this.#move(this.#xCells), y: this.#move(this.#yCells) };
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (Number.isNaN(this.#now)) this.#begin(t);
    else this.advance(t);
    this.#x = x;
    this.#y = y;
    this.#noise.x.reading(t, x);
    this.#noise.y.reading(t, y);
    if (buttonDown || this.#down) this.break(t);
    this.#down = buttonDown;
  }

  /** Lets time pass in which no reading came. */
  advance(t: number): void {
    if (Number.isNaN(this.#now)) return;
    while (this.#cell * CELL_US + CELL_US <= t) {
      const end = (this.#cell + 1) * CELL_US;
      this.#hold(end);
      this.#closeCell(end);
      if (this.#isUniform()) this.#skipTo(t);
    }
    this.#hold(t);
  }

  /** Forgets what was seen: a button, a release, a gap. Settling is judged from whole cells after `t` only. */
  break(t: number): void {
    if (Number.isNaN(this.#now)) return;
    this.advance(t);
    this.#leave(t);
    this.#begin(t);
  }

  #begin(t: number): void {
    this.#now = t;
    this.#cell = Math.floor(t / CELL_US);
    // The cell that a break falls into is not whole: it is passed over when it ends.
    this.#whole = t % CELL_US === 0 ? 0 : -1;
    this.#xInCell = 0;
    this.#yInCell = 0;
  }

  #hold(to: number): void {
    this.#xInCell += (to - this.#now) * this.#x;
    this.#yInCell += (to - this.#now) * this.#y;
    this.#now = to;
  }

  #closeCell(end: number): void {
    this.#newest = (this.#newest + 1) % (2 * CELLS);
    this.#xCells[this.#newest] = this.#xInCell;
    this.#yCells[this.#newest] = this.#yInCell;
    this.#xInCell = 0;
    this.#yInCell = 0;
    this.#cell += 1;
    this.#whole = Math.min(this.#whole + 1, 2 * CELLS);
    // A button that is held keeps everything open; so does a stick that was not read yet.
    if (this.#down) this.#whole = 0;
    const movement = this.movement;
    if (movement !== null && movement.x <= this.#limit('x') && movement.y <= this.#limit('y')) this.#enter(end);
    else this.#leave(end);
  }

  /** In counts; a reading that is alone in its noise moves a mean by more where reports are few. */
  #limit(axis: 'x' | 'y'): number {
    const least = axis === 'x' ? this.#xLimit : this.#yLimit;
    return Math.max(least, Math.min(MOST_LIMITS * least, NOISES * this.#noise[axis].ofMean(MEAN_US) * Math.SQRT2));
  }

  #enter(at: number): void {
    if (this.#settled) return;
    this.#settled = true;
    this.#listener.settled(at);
  }

  #leave(at: number): void {
    if (!this.#settled) return;
    this.#settled = false;
    this.#listener.moved(at - MEAN_US);
  }

  /** After 20 equal cells nothing changes until the next reading: a pad silent for hours costs no more than 200 ms. */
  #isUniform(): boolean {
    if (this.#whole < 2 * CELLS) return this.#down;
    const x = this.#xCells[this.#newest];
    const y = this.#yCells[this.#newest];
    return this.#xCells.every((cell) => cell === x) && this.#yCells.every((cell) => cell === y);
  }

  #skipTo(t: number): void {
    const last = Math.floor(t / CELL_US);
    if (last <= this.#cell) return;
    this.#cell = last;
    this.#now = last * CELL_US;
  }

  /** Difference of the two means in counts. */
  #move(cells: Float64Array): number {
    let sum = 0;
    for (let back = 0; back < 2 * CELLS; back += 1) {
      const cell = cells[(this.#newest + 2 * CELLS - back) % (2 * CELLS)] ?? Number.NaN;
      sum += back < CELLS ? cell : -cell;
    }
    return Math.abs(sum) / MEAN_US;
  }
}

/** In counts. */
export function settleLimit(field: AxisField): number {
  return Math.max(1, 0.0005 * (field.maximum - field.minimum));
}
