/** Buttons, hat and triggers as seen in a log, as `measure` prints it. */
import type { StickId } from '../pad/stick.ts';

export interface ButtonMeasure {
  readonly usage: number;
  readonly pressed: boolean;
  readonly released: boolean;
  /** Longest bounce in milliseconds: a contact that opens or closes again right after it changed; null where it was never pressed. */
  readonly bounceMs: number | null;
}

export interface TriggerMeasure {
  readonly min: number;
  readonly max: number;
  /** The least value after the farthest: where it came back to. */
  readonly back: number;
  /** Limits of its field: what a full travel would reach. */
  readonly fieldMinimum: number;
  readonly fieldMaximum: number;
}

export interface InputsMeasure {
  readonly buttons: readonly ButtonMeasure[];
  /** Hat directions seen, degrees clockwise from up, in order; null where the pad has no hat. */
  readonly hat: readonly number[] | null;
  readonly triggers: Readonly<Partial<Record<StickId, TriggerMeasure>>>;
  /** The buttons that click a stick in, where a profile knows them. */
  readonly clicks: Readonly<Partial<Record<StickId, number>>>;
}
