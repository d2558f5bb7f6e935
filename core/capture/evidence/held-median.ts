/** Running median of five samples over readings that hold until the next, the same live and in a log. */
import { medianOf3, medianOf5 } from '../../numeric/small-median.ts';
import { LatestMedian } from './latest-median.ts';

/** Takes each filtered sample: the time of its reading and raw counts. */
type TakeSample = (t: number, x: number, y: number) => void;

const ARM = 2;
const WINDOW = 2 * ARM + 1;
/** Intervals that the usual one is taken from: the median of the latest. */
const INTERVALS = 15;

/**
 * A reading that was held for k usual intervals counts k times (at most five), so that a pad that reports only changes
 * loses no place where the stick stood, and a spike of one or two reports is taken out all the same. With even
 * intervals this is the plain running median, per axis. Answers lag two samples behind; `end` gives the last ones.
 */
export class HeldMedian {
  readonly #take: TakeSample;
  readonly #intervals = new LatestMedian(INTERVALS);
  /** The last five samples, in turn. */
  readonly #t = new Float64Array(WINDOW);
  readonly #x = new Float64Array(WINDOW);
  readonly #y = new Float64Array(WINDOW);
  #samples = 0;
  #held: { t: number; x: number; y: number } | null = null;

  constructor(take: TakeSample) {
    this.#take = take;
  }

  reading(t: number, x: number, y: number): void {
    const held = this.#held;
    if (held !== null) {
      const interval = t - held.t;
      this.#intervals.add(interval);
      this.#repeat(held.t, held.x, held.y, interval);
      held.t = t;
      held.x = x;
      held.y = y;
    } else this.#held = { t, x, y };
  }

  /** Gives out what is left and starts again; near an end the window shrinks evenly. */
  end(): void {
    const held = this.#held;
    if (held !== null) this.#sample(held.t, held.x, held.y);
    this.#held = null;
    if (this.#samples >= 4) this.#give(this.#samples - 2, 1);
    if (this.#samples >= 2) this.#give(this.#samples - 1, 0);
    this.#samples = 0;
    this.#intervals.clear();
  }

  #repeat(t: number, x: number, y: number, interval: number): void {
    const usual = this.#intervals.median;
    const times = usual > 0 ? Math.min(WINDOW, Math.max(1, Math.round(interval / usual))) : 1;
    for (let i = 0; i < times; i += 1) this.#sample(t, x, y);
  }

  #sample(t: number, x: number, y: number): void {
    const at = this.#samples % WINDOW;
    this.#t[at] = t;
    this.#x[at] = x;
    this.#y[at] = y;
    this.#samples += 1;
    if (this.#samples >= WINDOW) this.#give(this.#samples - 1 - ARM, ARM);
    else if (this.#samples === 1) this.#give(0, 0);
    else if (this.#samples === 3) this.#give(1, 1);
  }

  /** The sample with this number, filtered over `arm` neighbours on each side. */
  #give(number: number, arm: number): void {
    this.#take(this.#t[number % WINDOW] ?? Number.NaN, middle(this.#x, number, arm), middle(this.#y, number, arm));
  }
}

function middle(values: Float64Array, number: number, arm: number): number {
  const at = (i: number): number => values[(number + i + WINDOW) % WINDOW] ?? Number.NaN;
  if (arm === 0) return at(0);
  return arm === 1 ? medianOf3(at(-1), at(0), at(1)) : medianOf5(at(-2), at(-1), at(0), at(1), at(2));
}
