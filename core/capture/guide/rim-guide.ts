/** Leads a hand through a rim capture: turns each way along the gate, and what they have not covered yet; live. */
import { directionCount } from '../../geometry/directions.ts';
import type { Pair, StickFields } from '../../pad/stick.ts';
import type { GuideOptions } from './capture-guide.ts';
import { nameStretches, tallyDirections, uncoveredDirections } from './coverage.ts';
import type { Turn } from '../evidence/evidence.ts';
import { middleOf } from '../evidence/main-rest.ts';
import { MoveWatch } from './move-watch.ts';
import { rimPrompt } from './rim-prompt.ts';
import { GAP_US } from '../evidence/still-spans.ts';
import { TurnCounter, type Tally } from '../evidence/turn-counter.ts';

type RimPhase = 'waiting' | 'turning';

/** Turns each way that cover a direction. */
const COVERING = 2;

/**
 * Asks for turns each way and counts them as evidence does, with the same counter: what was counted here is what a log
 * proves. Done when there are enough each way and every direction is covered both ways, or on the hand's word. Writes the
 * marks `turn` (for a reader of the log) and `repeat`. Times are the log's microseconds.
 */
export class RimGuide {
  readonly #options: GuideOptions & { readonly turns: number };
  readonly #counter: TurnCounter;
  readonly #watch: MoveWatch;
  #counted = 0;
  #covered: readonly Tally[] = tallyDirections([]);
  #uncovered: readonly number[];
  /** Directions that the last turn has no reading in. */
  #missed = 0;
  #isConfirmed = false;
  #isTurning = false;
  #prompt = '';
  #lastReadingUs = Number.NaN;
  #gap = false;

  /** `rests` are the rest points taken of the stick, raw counts: directions are about their mean, or the fields' middle. */
  constructor(options: GuideOptions & { readonly turns: number; readonly rests: readonly Pair[] }) {
    this.#options = options;
    this.#counter = new TurnCounter(options.fields, aboutOf(options.rests, options.fields));
    this.#watch = new MoveWatch(options.fields, options.startUs);
    this.#uncovered = uncoveredDirections(this.#covered, this.#needed);
    this.#say(null);
  }

  get phase(): RimPhase {
    return this.#isTurning ? 'turning' : 'waiting';
  }

  get prompt(): string {
    return this.#prompt;
  }

  /** Whole turns counted each way. */
  get turns(): Tally {
    return this.#counter.tally;
  }

  /** Degrees of the turn under way, counter-clockwise positive; 0 off the rim. */
  get underway(): number {
    return this.#counter.underway;
  }

  /** For each of the 72 directions the turns each way that covered it. */
  get covered(): readonly Tally[] {
    return this.#covered;
  }

  /** Names of the stretches that are not covered both ways yet. */
  get uncovered(): readonly string[] {
    return nameStretches(this.#uncovered);
  }

  /** The way to turn next; null when enough turns are there and all is covered. */
  get wanted(): Turn['way'] | null {
    const { clockwise, counterClockwise } = this.turns;
    const { turns } = this.#options;
    if (clockwise < turns) return 'clockwise';
    if (counterClockwise < turns) return 'counterClockwise';
    const lacks = (way: Turn['way']): boolean =>
      this.#uncovered.some((direction) => (this.#covered[direction]?.[way] ?? 0) < this.#needed);
    if (lacks('clockwise')) return 'clockwise';
    return lacks('counterClockwise') ? 'counterClockwise' : null;
  }

  /** Turns still asked for the wanted way; at least one while something is wanted. */
  get more(): number {
    const way = this.wanted;
    return way === null ? 0 : Math.max(1, this.#options.turns - this.turns[way]);
  }

  get isDone(): boolean {
    return this.#isConfirmed || this.wanted === null;
  }

  reading(t: number, x: number, y: number): void {
    if (this.isDone) return;
    if (this.#gap && t - this.#lastReadingUs > GAP_US) this.#counter.interrupt();
    this.#gap = false;
    this.#lastReadingUs = t;
    this.#counter.reading(t, x, y);
    this.#watch.reading(x, y);
    this.#look(t);
  }

  /** Time passes without a reading. */
  advance(t: number): void {
    if (!this.isDone && this.#watch.isLong(t)) this.#say(this.#watch);
  }

  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void {
    this.#gap = true;
  }

  /** Drops the last turn, and the one under way. */
  repeat(t: number): void {
    this.#counter.dropLast();
    this.#options.mark(t, 'repeat', { of: 'turn', stick: this.#options.stick });
    this.#count();
    this.#watch.start(t);
    this.#say(null);
  }

  /** The hand's word that what was taken is enough. */
  confirm(): void {
    this.finish();
    this.#isConfirmed = true;
  }

  /** No further reading comes: a turn that is whole but for the last readings counts. */
  finish(): void {
    this.#counter.end();
    this.#count();
  }

  get #needed(): number {
    return Math.min(COVERING, this.#options.turns);
  }

  #look(t: number): void {
    const isTurning = this.#counter.underway !== 0;
    const { clockwise, counterClockwise } = this.turns;
    const more = clockwise + counterClockwise - this.#counted;
    if (more !== 0) {
      this.#count();
      const last = this.#counter.turns.at(-1);
      if (more > 0 && last !== undefined) this.#options.mark(t, 'turn', { stick: this.#options.stick, way: last.way });
      this.#missed = last === undefined ? 0 : last.points.filter((point) => point === null).length;
    }
    if (more !== 0 || isTurning !== this.#isTurning) {
      this.#isTurning = isTurning;
      this.#watch.start(t);
      this.#say(null);
    } else if (this.#watch.isLong(t)) this.#say(this.#watch);
  }

  #count(): void {
    const turns = this.#counter.turns;
    this.#counted = turns.length;
    this.#covered = tallyDirections(turns);
    this.#uncovered = uncoveredDirections(this.#covered, this.#needed);
  }

  #say(stuck: MoveWatch | null): void {
    this.#prompt = rimPrompt({
      stick: this.#options.stick,
      way: this.wanted,
      more: this.more,
      uncovered: this.#counted === 0 ? [] : this.uncovered,
      isComplete: Math.min(this.turns.clockwise, this.turns.counterClockwise) >= this.#options.turns,
      missedShare: this.#missed / directionCount,
      stuck: stuck === null ? null : { seen: stuck, isTurning: this.#isTurning },
    });
    if (stuck !== null) stuck.rest();
  }
}

function aboutOf(rests: readonly Pair[], fields: StickFields): Pair {
  if (rests.length === 0) return middleOf(fields);
  const mean = (axis: 'x' | 'y'): number => rests.reduce((sum, rest) => sum + rest[axis], 0) / rests.length;
  return { x: mean('x'), y: mean('y') };
}
