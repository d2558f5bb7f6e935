/** Leads a hand through a rest capture: push, let go, settle, dwell; live, reading by reading, hands-free. */
import type { Pair, StickFields } from '../../pad/stick.ts';
import { AskList } from './ask-list.ts';
import type { GuideOptions } from './capture-guide.ts';
import { DwellMean } from './dwell-mean.ts';
import { middleOf, tiltBetween } from '../evidence/main-rest.ts';
import { MoveWatch } from './move-watch.ts';
import { releaseDirection } from './release-directions.ts';
import { restPrompt, type RestPhase } from './rest-prompt.ts';
import { SettleDetector } from '../evidence/settle-detector.ts';
import { DWELL_US, GAP_US } from '../evidence/still-spans.ts';

/** A push tilts the stick by at least this share of the half range. */
const PUSH_SHARE = 0.2;
/** Let go: the stick came back by half of the push. */
const RETURN_SHARE = 0.5;
/** A stick that stands still within this share of the half range at the beginning stands at its rest. */
const NEAR_SHARE = 0.4;

export interface RestOptions extends GuideOptions {
  /** How many are asked for: 24 as a rule, 12 at least for any statement. */
  readonly releases: number;
  /** Number of the first release among all directions; 0 where it is left out. */
  readonly first?: number;
}

/** A rest point, and the direction that the push before it was asked for. */
export interface TakenRest extends Pair {
  readonly toward: number;
}

/**
 * Asks for releases from spread directions and takes each that settles and stays settled for 500 ms with no button down,
 * whatever direction it came from. Writes the marks `toward`, `release`, `dwell` and `repeat`; evidence is gathered from
 * the same marks, so that what was counted here is what a log proves. Times are the log's microseconds.
 */
export class RestGuide {
  readonly #options: GuideOptions;
  readonly #fields: StickFields;
  readonly #releases: AskList<Pair>;
  readonly #detector: SettleDetector;
  readonly #mean = new DwellMean();
  readonly #watch: MoveWatch;
  #phase: RestPhase = 'waiting';
  #prompt = '';
  /** The stick is taken to rest here: the mean of what was taken, before that where it first stood still. */
  #home: Pair;
  #furthest = 0;
  #dwellUs = 0;
  #lastReadingUs = Number.NaN;
  #gap = false;
  #down = false;

  constructor(options: RestOptions) {
    this.#options = options;
    this.#fields = options.fields;
    this.#releases = new AskList(
      Array.from({ length: options.releases }, (_, number) => releaseDirection(number + (options.first ?? 0))),
    );
    this.#home = middleOf(options.fields);
    this.#watch = new MoveWatch(options.fields, options.startUs);
    this.#detector = new SettleDetector(options.fields, { settled: () => undefined, moved: () => undefined });
    this.#ask(options.startUs);
  }

  get phase(): RestPhase {
    return this.#phase;
  }

  /** What the hand is asked to do now, or what is seen where it does not. */
  get prompt(): string {
    return this.#prompt;
  }

  /** Degrees counter-clockwise from +x; null when everything was taken. */
  get toward(): number | null {
    return this.#releases.next;
  }

  /** Rest points taken, raw counts as reported, in order, each with the direction that was asked for. */
  get rests(): readonly TakenRest[] {
    return this.#releases.taken.map(({ toward, kept }) => ({ ...kept, toward }));
  }

  /** Taken and still to come: skipped ones are no longer asked for. */
  get asked(): number {
    return this.#releases.asked;
  }

  get isDone(): boolean {
    return this.#releases.next === null;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (this.isDone) return;
    if (this.#gap && t - this.#lastReadingUs > GAP_US) this.#detector.break(t);
    this.#gap = false;
    this.#lastReadingUs = t;
    this.#mean.advance(t);
    this.#detector.reading(t, x, y, buttonDown);
    this.#mean.reading(t, x, y);
    this.#watch.reading(x, y);
    this.#down = buttonDown;
    this.#follow(t, { x, y });
    this.#look(t);
  }

  /** Time passes without a reading: a pad that reports only changes is still while it is silent. */
  advance(t: number): void {
    if (this.isDone) return;
    this.#detector.advance(t);
    this.#mean.advance(t);
    this.#look(t);
  }

  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void {
    this.#gap = true;
  }

  /** Drops the last release taken and asks for it again; before any was taken, asks for the present one again. */
  repeat(t: number): void {
    if (this.#releases.repeat()) this.#options.mark(t, 'repeat', { of: 'release', stick: this.#options.stick });
    this.#settleHome();
    this.#ask(t);
  }

  /** Asks for the present direction no longer. */
  skip(t: number): void {
    this.#releases.skip();
    this.#ask(t);
  }

  /** What the reading says of the push. */
  #follow(t: number, place: Pair): void {
    const tilt = tiltBetween(this.#fields, this.#home, place);
    if (this.#phase === 'pushing') {
      this.#furthest = Math.max(this.#furthest, tilt);
      if (tilt > RETURN_SHARE * this.#furthest) return;
      this.#options.mark(t, 'release', { stick: this.#options.stick });
      this.#detector.break(t);
      this.#enter('settling', t);
    } else if (tilt >= Math.max(PUSH_SHARE, this.#phase === 'waiting' ? 0 : RETURN_SHARE * this.#furthest)) {
      this.#furthest = tilt;
      this.#enter('pushing', t);
    } else if (this.#phase === 'waiting') this.#findHome(place, tilt);
  }

  /** What time says of the settling. */
  #look(t: number): void {
    const settled = this.#detector.isSettled && !this.#down;
    if (this.#phase === 'settling' && settled) {
      this.#options.mark(t, 'dwell', { stick: this.#options.stick, edge: 'begin' });
      this.#mean.start(t);
      this.#dwellUs = t;
      this.#enter('dwelling', t);
    } else if (this.#phase === 'dwelling') {
      if (!settled) this.#enter('settling', t);
      else if (t - this.#dwellUs >= DWELL_US) this.#take(t);
    }
    if (this.#watch.isLong(t)) this.#say(true);
  }

  #take(t: number): void {
    this.#options.mark(t, 'dwell', { stick: this.#options.stick, edge: 'end' });
    this.#releases.take(this.#mean.mean);
    this.#settleHome();
    this.#ask(t);
  }

  #ask(t: number): void {
    const toward = this.#releases.next;
    if (toward !== null) this.#options.mark(t, 'toward', { stick: this.#options.stick, angle: toward });
    this.#furthest = 0;
    this.#enter('waiting', t);
  }

  #enter(phase: RestPhase, t: number): void {
    const goesOn = isStill(this.#phase) && isStill(phase);
    this.#phase = phase;
    // A stick that settles and moves again, over and over, is waited for as one that does not settle.
    if (goesOn) return;
    this.#watch.start(t);
    this.#say(false);
  }

  /** The sentence stays as it is until something changes, so that a voice does not begin anew with every reading. */
  #say(isLong: boolean): void {
    const stuck = isLong ? { seen: this.#watch, movement: this.#detector.movement, isButtonDown: this.#down } : null;
    this.#prompt = restPrompt(this.#options, this.#phase, this.#releases.next, stuck);
    if (isLong) this.#watch.rest();
  }

  #findHome(place: Pair, tilt: number): void {
    if (this.#releases.taken.length === 0 && this.#detector.isSettled && tilt <= NEAR_SHARE) this.#home = place;
  }

  #settleHome(): void {
    const rests = this.#releases.taken.map(({ kept }) => kept);
    if (rests.length === 0) return;
    const mean = (axis: 'x' | 'y'): number => rests.reduce((sum, rest) => sum + rest[axis], 0) / rests.length;
    this.#home = { x: mean('x'), y: mean('y') };
  }
}

function isStill(phase: RestPhase): boolean {
  return phase === 'settling' || phase === 'dwelling';
}
