/** Leads a hand through dwells with the stick's click held: press straight down, keep still; live, hands-free. */
import type { Pair } from '../../pad/stick.ts';
import type { GuideOptions } from './capture-guide.ts';
import { MoveWatch } from './move-watch.ts';
import { SettleDetector } from '../evidence/settle-detector.ts';
import { DWELL_US, GAP_US } from '../evidence/still-spans.ts';

type ClickPhase = 'waiting' | 'settling' | 'dwelling';

/** Writes the mark `dwell` around each settled half second with the click down, one a press. */
export class ClickGuide {
  readonly #options: GuideOptions & { readonly dwells: number };
  readonly #detector: SettleDetector;
  readonly #watch: MoveWatch;
  #phase: ClickPhase = 'waiting';
  #taken = 0;
  #isDown = false;
  /** The press under way gave its dwell: the next one is waited for. */
  #isSpent = false;
  #dwellUs = 0;
  #prompt = '';
  #lastReadingUs = Number.NaN;
  #gap = false;

  constructor(options: GuideOptions & { readonly dwells: number }) {
    this.#options = options;
    this.#detector = new SettleDetector(options.fields, { settled: () => undefined, moved: () => undefined });
    this.#watch = new MoveWatch(options.fields, options.startUs);
    this.#say(false);
  }

  get phase(): ClickPhase {
    return this.#phase;
  }

  get prompt(): string {
    return this.#prompt;
  }

  get taken(): number {
    return this.#taken;
  }

  get asked(): number {
    return this.#options.dwells;
  }

  get isDone(): boolean {
    return this.#taken >= this.#options.dwells;
  }

  /** `clickDown`: the stick is pressed down. */
  reading(t: number, place: Pair, clickDown: boolean): void {
    if (this.isDone) return;
    if (this.#gap && t - this.#lastReadingUs > GAP_US) this.#detector.break(t);
    this.#gap = false;
    this.#lastReadingUs = t;
    // The click is what is held: to the detector no button is down.
    this.#detector.reading(t, place.x, place.y, false);
    this.#watch.reading(place.x, place.y);
    if (clickDown !== this.#isDown) this.#change(t, clickDown);
    this.#look(t);
  }

  advance(t: number): void {
    if (this.isDone) return;
    this.#detector.advance(t);
    this.#look(t);
  }

  gap(): void {
    this.#gap = true;
  }

  /** Drops the last dwell taken. */
  repeat(t: number): void {
    if (this.#taken > 0) this.#options.mark(t, 'repeat', { of: 'release', stick: this.#options.stick });
    this.#taken = Math.max(0, this.#taken - 1);
    this.#enter('waiting', t);
  }

  #change(t: number, clickDown: boolean): void {
    this.#isDown = clickDown;
    this.#isSpent &&= clickDown;
    this.#detector.break(t);
    this.#enter(clickDown && !this.#isSpent ? 'settling' : 'waiting', t);
  }

  #look(t: number): void {
    const { isSettled } = this.#detector;
    if (this.#phase === 'settling' && isSettled) {
      this.#mark(t, 'begin');
      this.#dwellUs = t;
      this.#enter('dwelling', t);
    } else if (this.#phase === 'dwelling' && !isSettled) this.#enter('settling', t);
    else if (this.#phase === 'dwelling' && t - this.#dwellUs >= DWELL_US) {
      this.#mark(t, 'end');
      this.#taken += 1;
      this.#isSpent = true;
      this.#enter('waiting', t);
    }
    if (this.#watch.isLong(t)) this.#say(true);
  }

  #mark(t: number, edge: 'begin' | 'end'): void {
    this.#options.mark(t, 'dwell', { stick: this.#options.stick, edge });
  }

  #enter(phase: ClickPhase, t: number): void {
    this.#phase = phase;
    this.#watch.start(t);
    this.#say(false);
  }

  #say(isLong: boolean): void {
    const { stick } = this.#options;
    if (isLong) this.#watch.rest();
    if (this.isDone) this.#prompt = `All dwells of the ${stick} stick are taken.`;
    else if (this.#isSpent) this.#prompt = `Let go of the ${stick} stick.`;
    else if (this.#phase === 'waiting')
      this.#prompt = isLong
        ? `No click has come. Press the ${stick} stick straight down and hold it.`
        : `Press the ${stick} stick straight down and hold it still.`;
    else
      this.#prompt = isLong
        ? `The ${stick} stick does not settle. Press it straight down, without pushing it aside.`
        : 'Hold it still.';
  }
}
