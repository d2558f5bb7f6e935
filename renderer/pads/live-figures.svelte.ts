/** What the Pad view shows of the live readings: a handful of numbers, taken anew once a frame at most. */
import type { AxisLine } from './axis-list.ts';
import type { ControlRow } from './control-watch.ts';
import type { LiveReadings } from './live-readings.ts';

/** Figures that change more often than ten times a second cannot be read. */
const FIGURES_EVERY_MILLIS = 100;

export interface AxisFigures {
  readonly value: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
}

export class LiveFigures {
  /** Newest count of each column, for marks that move with the hand. */
  marks = $state.raw<readonly number[]>([]);
  /** The same for figures that are read. */
  counts = $state.raw<readonly number[]>([]);
  least = $state.raw<readonly number[]>([]);
  greatest = $state.raw<readonly number[]>([]);
  rows = $state.raw<readonly ControlRow[]>([]);
  #seen = -1;
  #rowsSeen = -1;
  #figuresAt = Number.NEGATIVE_INFINITY;

  /** Looks at the readings; does nothing where nothing has come since. */
  look(live: LiveReadings, millis: number): void {
    if (live.version !== this.#seen) {
      this.#seen = live.version;
      this.marks = live.ring.columns.map((_column, column) => live.ring.newest(column));
      this.least = [...live.extents.least];
      this.greatest = [...live.extents.greatest];
    }
    if (millis - this.#figuresAt < FIGURES_EVERY_MILLIS) return;
    this.#figuresAt = millis;
    this.counts = this.marks;
    if (live.controls.version === this.#rowsSeen) return;
    this.#rowsSeen = live.controls.version;
    this.rows = live.controls.rows();
  }

  /** Another pad, or the lists were started again: the next look takes everything anew. */
  forget(): void {
    this.#seen = -1;
    this.#rowsSeen = -1;
    this.#figuresAt = Number.NEGATIVE_INFINITY;
    this.marks = [];
    this.counts = [];
    this.least = [];
    this.greatest = [];
    this.rows = [];
  }

  of(axis: AxisLine): AxisFigures {
    return {
      value: known(this.counts[axis.column]),
      least: known(this.least[axis.column]),
      greatest: known(this.greatest[axis.column]),
    };
  }

  /** Newest count of an axis, for its mark; null while there is none. */
  markOf(axis: AxisLine): number | null {
    return known(this.marks[axis.column]);
  }
}

function known(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}
