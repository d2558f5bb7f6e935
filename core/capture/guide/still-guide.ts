/** After the releases of a rest: keeps the hand off for as long as the noise over time takes; live, reading by reading. */
import type { GuideOptions } from './capture-guide.ts';
import { SettleDetector } from '../evidence/settle-detector.ts';

/** So many readings tell of the noise over time (core/measure/allan.ts), with a few to spare. */
const READINGS = 1_050;
/** A slower pad would take longer than a hand wants to wait. */
const MOST_US = 10_000_000;
/** After this long the rate is known. */
const LOOK_US = 600_000;
/** Settling takes no longer; else the stick is held. */
const SETTLE_US = 2_000_000;

/**
 * Writes the mark `still` around a stretch in which the stick is settled and untouched. Ends by itself: with enough readings,
 * when the stick is touched, and soon where the pad reports too seldom for enough of them within 10 s, e.g. on change only.
 */
export class StillGuide {
  readonly #options: GuideOptions;
  readonly #detector: SettleDetector;
  #beginUs: number | null = null;
  #readings = 0;
  #isDone = false;
  #gap = false;

  constructor(options: GuideOptions) {
    this.#options = options;
    this.#detector = new SettleDetector(options.fields, { settled: () => undefined, moved: () => undefined });
  }

  get isDone(): boolean {
    return this.#isDone;
  }

  get prompt(): string {
    return `Keep off the ${this.#options.stick} stick a few seconds more: its noise over time is measured.`;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (this.#isDone) return;
    this.#detector.reading(t, x, y, buttonDown);
    if (this.#beginUs !== null) this.#readings += 1;
    this.#look(t, buttonDown);
  }

  /** Time passes without a reading. */
  advance(t: number): void {
    if (this.#isDone) return;
    this.#detector.advance(t);
    this.#look(t, false);
  }

  /** Reports were lost: the stretch ends here. */
  gap(): void {
    this.#gap = true;
  }

  #look(t: number, buttonDown: boolean): void {
    const { isSettled } = this.#detector;
    if (this.#beginUs === null) {
      if (isSettled && !buttonDown) {
        this.#beginUs = t;
        this.#mark(t, 'begin');
      } else if (t - this.#options.startUs > SETTLE_US) this.#isDone = true;
      return;
    }
    const elapsed = t - this.#beginUs;
    const isHopeless = elapsed >= LOOK_US && (this.#readings / elapsed) * MOST_US < READINGS;
    if (this.#readings >= READINGS || !isSettled || buttonDown || this.#gap || isHopeless || elapsed > MOST_US) {
      this.#mark(t, 'end');
      this.#isDone = true;
    }
  }

  #mark(t: number, edge: 'begin' | 'end'): void {
    this.#options.mark(t, 'still', { stick: this.#options.stick, edge });
  }
}
