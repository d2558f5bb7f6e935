/** Leads a hand through a travel capture: slow sweeps along x and y, each way; live, reading by reading, hands-free. */
import { angleOf, wrapDegrees } from '../../geometry/angle.ts';
import type { Pair } from '../../pad/stick.ts';
import { AskList } from './ask-list.ts';
import type { GuideOptions } from './capture-guide.ts';
import { HeldMedian } from '../evidence/held-median.ts';
import { MoveWatch } from './move-watch.ts';
import { StandWatch } from './stand-watch.ts';
import { GAP_US } from '../evidence/still-spans.ts';
import { Home } from './stick-tilt.ts';
import { SweepWatch, type SweepFault } from './sweep-watch.ts';
import { travelPrompt, type TravelPhase } from './travel-prompt.ts';

/** No sweep begins at the gate where the one before ended, so that letting go in between is no sweep. */
const ORDER = [0, 90, 180, 270];
/** A stick stands at the gate from this tilt on (share of the half range), or from this share of the reach once known. */
const LEAST_TILT = 0.3;
const NEAR_GATE = 0.75;
const STAND_US = 150_000;
/** A stick that is held where it was not asked is taken at its word: its axes may be swapped. */
const INSIST_US = 3_000_000;
const ASIDE_DEGREES = 30;

export interface TravelOptions extends GuideOptions {
  /** Sweeps toward each of the four directions. */
  readonly sweeps: number;
  /** Rest points taken of the stick, raw counts. */
  readonly rests: readonly Pair[];
}

/**
 * Writes the mark `toward` when the stick stands at the start of a sweep and `repeat` {of: "sweep"} where the sweep is
 * asked for once more: it was too fast, stopped, turned back or left the line, a button was down, reports were lost.
 */
export class TravelGuide {
  readonly #options: TravelOptions;
  readonly #home: Home;
  readonly #sweeps: AskList<number>;
  readonly #median: HeldMedian;
  readonly #watch: MoveWatch;
  readonly #stand = new StandWatch();
  /** Tilts that the gate was met at, by direction. */
  readonly #reach = new Map<number, number>();
  #tilt: Pair = { x: 0, y: 0 };
  #down = false;
  #sweep: SweepWatch | null = null;
  #phase: TravelPhase = 'waiting';
  #fault: SweepFault | null = null;
  /** Where the stick was seen to stand instead, and whether it has left that place since. */
  #elsewhere: number | null = null;
  #hasLeft = false;
  /** It has come by the middle since the sweep was asked for: where the one before ended, it may stand. */
  #wasFree = false;
  #isConfirmed = false;
  #prompt = '';
  #lastReadingUs = Number.NaN;
  #gap = false;

  constructor(options: TravelOptions) {
    this.#options = options;
    this.#home = new Home(options.rests, options.fields);
    this.#sweeps = new AskList(Array.from({ length: options.sweeps }, () => ORDER).flat());
    this.#median = new HeldMedian((t, x, y) => this.#sample(t, x, y));
    this.#watch = new MoveWatch(options.fields, options.startUs);
    this.#say(null);
  }

  get phase(): TravelPhase {
    return this.#phase;
  }

  get prompt(): string {
    return this.#prompt;
  }

  /** Direction of the sweep that is asked for, degrees counter-clockwise from +x; null when everything was taken. */
  get toward(): number | null {
    return this.#sweeps.next;
  }

  /** Directions of the sweeps taken, in order. */
  get taken(): readonly number[] {
    return this.#sweeps.taken.map(({ toward }) => toward);
  }

  get asked(): number {
    return this.#sweeps.asked;
  }

  /** Place of the sweep under way: −1 at the gate that it starts from, 1 at the one it goes to; null without one. */
  get along(): number | null {
    return this.#sweep?.along ?? null;
  }

  get isDone(): boolean {
    return this.#isConfirmed || this.#sweeps.next === null;
  }

  reading(t: number, x: number, y: number, buttonDown: boolean): void {
    if (this.isDone) return;
    if (this.#gap && t - this.#lastReadingUs > GAP_US) {
      this.#median.end();
      this.#stand.forget();
      this.#sweep?.gap();
    }
    this.#gap = false;
    this.#lastReadingUs = t;
    this.#down = buttonDown;
    this.#watch.reading(x, y);
    this.#median.reading(t, x, y);
    this.#look(t);
  }

  /** Time passes without a reading: a pad that reports only changes is still while it is silent. */
  advance(t: number): void {
    if (this.isDone) return;
    this.#sweep?.advance(t);
    this.#look(t);
  }

  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void {
    this.#gap = true;
  }

  /** Drops the last sweep taken, or the one under way, and asks for it again. */
  repeat(t: number): void {
    const wasUnderWay = this.#sweep !== null;
    if (wasUnderWay || this.#sweeps.repeat()) this.#markRepeat(t);
    this.#ask(t, null);
  }

  /** The hand's word that what was taken is enough: good once every direction was swept. */
  confirm(): void {
    this.#isConfirmed = ORDER.every((direction) => this.taken.includes(direction));
  }

  #sample(t: number, x: number, y: number): void {
    this.#tilt = this.#home.tilt(x, y);
    this.#stand.sample(t, this.#tilt);
    if (this.#stand.standsFor(t) >= STAND_US) this.#home.stands(x, y);
    this.#sweep?.sample(t, this.#tilt, this.#down);
  }

  #look(t: number): void {
    const sweep = this.#sweep;
    if (sweep === null) this.#lookForStart(t);
    else if (sweep.isOver) this.#judge(t, sweep);
    else if (sweep.isUnderWay && this.#phase === 'standing') this.#enter('sweeping', t);
    if (!this.isDone && this.#watch.isLong(t)) this.#say(this.#watch);
  }

  #lookForStart(t: number): void {
    const toward = this.#sweeps.next;
    const size = Math.hypot(this.#tilt.x, this.#tilt.y);
    if (size < LEAST_TILT) {
      this.#hasLeft = this.#elsewhere !== null;
      this.#wasFree = true;
    }
    if (toward === null || size < LEAST_TILT || this.#stand.standsFor(t) < STAND_US || this.#down) return;
    const from = wrapDegrees(toward + 180);
    const stands = angleOf(this.#tilt.x, this.#tilt.y);
    if (apart(stands, from) <= ASIDE_DEGREES) {
      if (size >= NEAR_GATE * (this.#reach.get(from) ?? 0)) this.#begin(t, toward, stands, size);
    } else if (!this.#wasFree) return;
    else if (this.#elsewhere === null || apart(stands, this.#elsewhere) > ASIDE_DEGREES) {
      this.#elsewhere = stands;
      this.#hasLeft = false;
      this.#say(null);
    } else if (this.#hasLeft || this.#stand.standsFor(t) >= INSIST_US) this.#begin(t, toward, stands, size);
  }

  #begin(t: number, toward: number, stands: number, size: number): void {
    const from = wrapDegrees(toward + 180);
    this.#reach.set(from, Math.max(size, this.#reach.get(from) ?? 0));
    this.#options.mark(t, 'toward', { stick: this.#options.stick, angle: toward });
    const direction = wrapDegrees(stands + 180);
    this.#sweep = new SweepWatch({ direction, start: size, end: this.#reach.get(toward) ?? null });
    this.#enter('standing', t);
  }

  #judge(t: number, sweep: SweepWatch): void {
    const toward = this.#sweeps.next ?? 0;
    if (sweep.fault === null) {
      this.#reach.set(toward, Math.max(sweep.furthest, this.#reach.get(toward) ?? 0));
      this.#sweeps.take(sweep.furthest);
    } else this.#markRepeat(t);
    this.#ask(t, sweep.fault);
  }

  #markRepeat(t: number): void {
    this.#options.mark(t, 'repeat', { of: 'sweep', stick: this.#options.stick });
  }

  #ask(t: number, fault: SweepFault | null): void {
    this.#sweep = null;
    this.#wasFree = false;
    this.#fault = fault;
    if (fault === null) this.#elsewhere = null;
    this.#enter('waiting', t);
  }

  #enter(phase: TravelPhase, t: number): void {
    this.#phase = phase;
    this.#watch.start(t);
    this.#say(null);
  }

  #say(stuck: MoveWatch | null): void {
    this.#prompt = travelPrompt({
      stick: this.#options.stick,
      toward: this.#sweeps.next,
      phase: this.#phase,
      fault: this.#fault,
      elsewhere: stuck === null ? this.#elsewhere : null,
      stuck,
    });
    stuck?.rest();
  }
}

function apart(a: number, b: number): number {
  return Math.abs(wrapDegrees(a - b + 180) - 180);
}
