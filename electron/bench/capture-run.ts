/** One capture under way, as a survey sees it whatever it is of. Times are microseconds from the start of the log. */
import type { EventPayload } from '../../shared/contract.ts';

export type SurveyState = EventPayload<'survey.state'>;

/** The part of the survey's state that belongs to the capture. */
export type CaptureView = Pick<
  SurveyState,
  'toward' | 'phase' | 'releases' | 'turns' | 'covered' | 'uncovered' | 'rests'
>;

/** What the hand is asked to do, for one that can be told. */
export type HandWish =
  | { readonly does: 'pushAndLetGo'; readonly toward: number }
  | { readonly does: 'turn'; readonly turns: number; readonly way: 'clockwise' | 'counterClockwise' };

export interface CaptureRun {
  reading(t: number, x: number, y: number, buttonDown: boolean): void;
  /** Time passes without a reading: a pad that reports only changes is still while it is silent. */
  advance(t: number): void;
  /** Reports were lost: what the stick did meanwhile is not known. */
  gap(): void;
  /** Drops the last release or turn; it is asked for once more. */
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
