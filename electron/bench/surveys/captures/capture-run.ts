/** One capture under way, as a survey sees it whatever it is of. Times are microseconds from the start of the log. */
import type { Disturbance } from '../../../../core/capture/evidence/disturbance.ts';
import type { ReadingSlot } from '../../../../core/pad/layout.ts';
import type { StickId } from '../../../../core/pad/stick.ts';
import type { EventPayload } from '../../../../shared/contract.ts';

export type SurveyState = EventPayload<'survey.state'>;

/** The part of the survey's state that belongs to the capture. */
export type CaptureView = Pick<
  SurveyState,
  | 'toward'
  | 'phase'
  | 'releases'
  | 'turns'
  | 'covered'
  | 'uncovered'
  | 'rests'
  | 'sweeps'
  | 'flicks'
  | 'warmUp'
  | 'inputs'
>;

/** What the hand is asked to do, for one that can be told. */
export type HandWish =
  /** `during`: what is to go on meanwhile. */
  | { readonly does: 'pushAndLetGo'; readonly toward: number; readonly during?: Disturbance }
  | { readonly does: 'turn'; readonly turns: number; readonly way: 'clockwise' | 'counterClockwise' }
  | { readonly does: 'sweep' | 'flick'; readonly toward: number }
  | { readonly does: 'holdClick'; readonly button: number }
  /** `turn` tells one try from the next. */
  | { readonly does: 'press'; readonly button: number; readonly turn: number }
  | { readonly does: 'pressHat'; readonly degrees: number; readonly turn: number }
  | { readonly does: 'pull'; readonly trigger: StickId; readonly turn: number };

/** One reading as a capture takes it; lent for the call only. */
export interface LiveReading {
  /** Raw counts of the capture's stick; NaN where it has none. */
  readonly x: number;
  readonly y: number;
  readonly buttonDown: boolean;
  readonly slot: ReadingSlot;
}

export interface CaptureRun {
  reading(t: number, reading: LiveReading): void;
  /** Time passes without a reading: a pad that reports only changes is still while it is silent. */
  advance(t: number): void;
  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void;
  /** Drops the last of what was taken; it is asked for once more. */
  repeat(t: number): void;
  /** The hand's word that it goes on with what there is. */
  confirm(): void;
  readonly isDone: boolean;
  /** What is asked now; cheap, for it is looked at with every report. */
  readonly prompt: string;
  view(): CaptureView;
  /** What the hand is to begin now; null while it is at it. */
  wish(): HandWish | null;
}
