/** Leads a hand through a flick capture: to full tilt, let go all at once, settle; live, hands-free. */
import type { Pair } from '../../pad/stick.ts';
import { AskList } from './ask-list.ts';
import type { GuideOptions } from './capture-guide.ts';
import { flickPrompt, type FlickPhase } from './flick-prompt.ts';
import { FlickWatch, PUSH_SHARE, type FlickFault } from '../evidence/flick-watch.ts';
import { MoveWatch } from './move-watch.ts';
import { SettleDetector } from '../evidence/settle-detector.ts';
import { GAP_US } from '../evidence/still-spans.ts';
import { Home } from './stick-tilt.ts';

const ORDER = [0, 180, 90, 270];
/** How long a stick is watched after it was let go, settled or not, before the next flick. */
const WATCHED_US = 500_000;
/** So far out, so long after it was let go, a stick is pushed again: no overshoot goes as far. */
const AGAIN_SHARE = 0.6;
const AGAIN_US = 150_000;
/** The same fault so often on one flick is the stick's own, not the hand's: it is taken as it is. */
const INSIST_TIMES = 3;
/** Faults that a stick may have by itself: swapped axes, a weak spring, a short range. */
const OWN_FAULTS: ReadonlySet<FlickFault> = new Set(['not-full', 'aside', 'led-back']);

export interface FlickOptions extends GuideOptions {
  /** Flicks in each of the four directions. */
  readonly flicks: number;
  /** Rest points taken of the stick, raw counts. */
  readonly rests: readonly Pair[];
}

/**
 * Writes the mark `release` when the stick is let go, and `repeat` {of: "flick"} where the flick is asked for once more: not at
 * full tilt, another way, led back, a button down, reports lost.
 */
export class FlickGuide {
  readonly #options: FlickOptions;
  readonly #home: Home;
  readonly #flicks: AskList<number>;
  readonly #detector: SettleDetector;
  readonly #watch: MoveWatch;
  /** Tilts that the gate was met at, by direction. */
  readonly #reach = new Map<number, number>();
  #flick: FlickWatch;
  #phase: FlickPhase = 'waiting';
  #fault: FlickFault | null = null;
  #faults = 0;
  #releasedUs = 0;
  /** The stick was near its rest since the flick was asked for: what it was held at before is no push. */
  #isFree = false;
  #isConfirmed = false;
  #prompt = '';
  #lastReadingUs = Number.NaN;
  #gap = false;

  constructor(options: FlickOptions) {
    this.#options = options;
    this.#home = new Home(options.rests, options.fields);
    this.#flicks = new AskList(Array.from({ length: options.flicks }, () => ORDER).flat());
    this.#detector = new SettleDetector(options.fields, { settled: () => undefined, moved: () => undefined });
    this.#watch = new MoveWatch(options.fields, options.startUs);
    this.#flick = this.#nextFlick();
    this.#say(false);
  }

  get phase(): FlickPhase {
    return this.#phase;
  }

  get prompt(): string {
    return this.#prompt;
  }

  /** Degrees counter-clockwise from +x; null when everything was taken. */
  get toward(): number | null {
    return this.#flicks.next;
  }

  /** Directions of the flicks taken, in order. */
  get taken(): readonly number[] {
    return this.#flicks.taken.map(({ toward }) => toward);
  }

  get asked(): number {
    return this.#flicks.asked;
  }

  get isDone(): boolean {
    return this.#isConfirmed || this.#flicks.next === null;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (this.isDone) return;
    if (this.#gap && t - this.#lastReadingUs > GAP_US) {
      this.#detector.break(t);
      this.#flick.gap();
    }
    this.#gap = false;
    this.#lastReadingUs = t;
    this.#detector.reading(t, x, y, buttonDown);
    this.#watch.reading(x, y);
    if (this.#detector.isSettled) this.#home.stands(x, y);
    this.#follow(t, this.#home.tilt(x, y), buttonDown);
    this.#look(t);
  }

  /** Time passes without a reading: a pad that reports only changes is still while it is silent. */
  advance(t: number): void {
    if (this.isDone) return;
    this.#detector.advance(t);
    this.#look(t);
  }

  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void {
    this.#gap = true;
  }

  /** Drops the last flick taken and asks for it again; before any was taken, asks for the present one again. */
  repeat(t: number): void {
    if (this.#flicks.repeat()) this.#markRepeat(t);
    this.#ask(t, null);
  }

  /** The hand's word that what was taken is enough: good once every direction was flicked. */
  confirm(): void {
    this.#isConfirmed = ORDER.every((direction) => this.taken.includes(direction));
  }

  #follow(t: number, tilt: Pair, buttonDown: boolean): void {
    const size = Math.hypot(tilt.x, tilt.y);
    if (this.#phase === 'settling') {
      const isPushed = size > AGAIN_SHARE * this.#flick.furthest && t - this.#releasedUs > AGAIN_US;
      if (isPushed) this.#refuse(t, 'pushed-again');
      return;
    }
    this.#isFree ||= size < PUSH_SHARE;
    if (!this.#isFree) return;
    this.#flick.sample(t, tilt, buttonDown);
    if (this.#flick.isReleased) {
      this.#options.mark(t, 'release', { stick: this.#options.stick });
      this.#detector.break(t);
      this.#releasedUs = t;
      this.#enter('settling', t);
    } else if (this.#phase === 'waiting' && this.#flick.isPushed) this.#enter('pushing', t);
  }

  #look(t: number): void {
    if (this.#phase === 'settling' && this.#detector.isSettled && t - this.#releasedUs >= WATCHED_US) this.#judge(t);
    else if (this.#watch.isLong(t)) this.#say(true);
  }

  #judge(t: number): void {
    const { fault, furthest } = this.#flick;
    const toward = this.#flicks.next ?? 0;
    this.#faults = fault === null ? 0 : this.#faults + 1;
    if (fault === null || (OWN_FAULTS.has(fault) && this.#faults >= INSIST_TIMES)) {
      if (fault !== 'aside') this.#reach.set(toward, furthest);
      this.#faults = 0;
      this.#flicks.take(furthest);
      this.#ask(t, null);
    } else this.#refuse(t, fault);
  }

  #refuse(t: number, fault: FlickFault): void {
    this.#markRepeat(t);
    this.#ask(t, fault);
  }

  #markRepeat(t: number): void {
    this.#options.mark(t, 'repeat', { of: 'flick', stick: this.#options.stick });
  }

  #ask(t: number, fault: FlickFault | null): void {
    this.#fault = fault;
    this.#isFree = false;
    this.#flick = this.#nextFlick();
    this.#enter('waiting', t);
  }

  #nextFlick(): FlickWatch {
    const toward = this.#flicks.next ?? 0;
    return new FlickWatch(toward, this.#reach.get(toward) ?? null);
  }

  #enter(phase: FlickPhase, t: number): void {
    this.#phase = phase;
    this.#watch.start(t);
    this.#say(false);
  }

  #say(isLong: boolean): void {
    this.#prompt = flickPrompt({
      stick: this.#options.stick,
      toward: this.#flicks.next,
      phase: this.#phase,
      fault: this.#fault,
      stuck: isLong ? { seen: this.#watch, movement: this.#detector.movement } : null,
    });
    if (isLong) this.#watch.rest();
  }
}
