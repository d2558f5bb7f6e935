/** Follows one slow sweep from the gate through the rest to the gate opposite, and says what was wrong with it. */
import type { Pair } from '../../pad/stick.ts';
import { StandWatch } from './stand-watch.ts';
import { alongAcross } from './stick-tilt.ts';

/** Why a sweep is asked for once more. */
export type SweepFault = 'too-fast' | 'stopped' | 'turned-back' | 'off-line' | 'button' | 'gap';

/** A sweep is timed between these shares of the way from the rest to either gate: hands start and end gently. */
const TIMED_SHARE = 0.8;
/** Where the gate of the far side is not known yet, this share of the near side's is taken for arriving. */
const UNKNOWN_ARRIVES = 0.65;
/** Gate to gate in 1.5 s at least: the timed part of it. Faster leaves too few readings a count. */
const LEAST_TIMED_US = 1_200_000;
const END_US = 150_000;
const STOPPED_US = 700_000;
const BACK_AT_END = 0.1;
const BACK_ON_WAY = 0.25;
const OFF_LINE = 0.45;

export interface SweepWay {
  /** Of the line, degrees counter-clockwise from +x: from the start through the rest. */
  readonly direction: number;
  /** Tilt at the start, in shares of the half range. */
  readonly start: number;
  /** Tilt at the gate of the far side; null while it is not known. */
  readonly end: number | null;
}

export class SweepWatch {
  readonly #way: SweepWay;
  readonly #arrivesAt: number;
  readonly #stand = new StandWatch();
  #along: number;
  #furthest: number;
  #leftUs: number | null = null;
  #arrivedUs: number | null = null;
  #fault: SweepFault | null = null;
  #isOver = false;

  constructor(way: SweepWay) {
    this.#way = way;
    this.#along = -way.start;
    this.#furthest = -way.start;
    this.#arrivesAt = way.end === null ? UNKNOWN_ARRIVES * way.start : TIMED_SHARE * way.end;
  }

  get isOver(): boolean {
    return this.#isOver;
  }

  get fault(): SweepFault | null {
    return this.#fault;
  }

  /** It has left the gate that it starts from. */
  get isUnderWay(): boolean {
    return this.#leftUs !== null;
  }

  /** Place on the way: −1 at the gate that it starts from, 1 at the one it goes to. */
  get along(): number {
    const size = this.#along < 0 ? this.#way.start : (this.#way.end ?? Math.max(this.#way.start, this.#furthest));
    return Math.min(1, Math.max(-1, this.#along / size));
  }

  /** The furthest tilt toward the far gate, in shares of the half range. */
  get furthest(): number {
    return this.#furthest;
  }

  sample(t: number, tilt: Pair, buttonDown: boolean): void {
    if (this.#isOver) return;
    const { along, across } = alongAcross(tilt, this.#way.direction);
    this.#along = along;
    this.#furthest = Math.max(this.#furthest, along);
    this.#stand.sample(t, tilt);
    if (Math.abs(across) > OFF_LINE * this.#way.start) this.#end('off-line');
    else if (along > -TIMED_SHARE * this.#way.start) {
      this.#leftUs ??= t;
      if (buttonDown) this.#fault ??= 'button';
      if (along >= this.#arrivesAt) this.#arrivedUs ??= t;
    }
    this.advance(t);
  }

  /** Time passes, with a reading or without. */
  advance(t: number): void {
    if (this.#isOver || this.#leftUs === null) return;
    const back = this.#furthest - this.#along;
    const stands = this.#stand.standsFor(t);
    if (this.#arrivedUs !== null) {
      if (stands >= END_US || back > BACK_AT_END * this.#arrivesAt)
        this.#end(this.#arrivedUs - this.#leftUs < LEAST_TIMED_US ? 'too-fast' : null);
    } else if (back > BACK_ON_WAY * this.#way.start) this.#end('turned-back');
    else if (stands >= STOPPED_US) this.#end('stopped');
  }

  /** Reports were lost. What spoils a sweep is told at its end: the hand goes on until then. */
  gap(): void {
    if (!this.#isOver && this.#leftUs !== null) this.#fault ??= 'gap';
  }

  #end(fault: SweepFault | null): void {
    this.#isOver = true;
    this.#fault ??= fault;
  }
}
