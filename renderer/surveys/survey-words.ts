/** Surveys in the words of the screen. */
import { disturbanceWords } from '../../core/capture/evidence/disturbance.ts';
import type { EventPayload, Reply } from '../../shared/contract.ts';
import { padName } from '../pads/pad-name.ts';
import { whenText } from '../kit/words/when-text.ts';

export type SurveySummary = Reply<'surveys.list'>[number];
export type SurveyRunState = EventPayload<'survey.state'>;

export const STAGES = [
  { stage: 'received', says: 'received: as it came in' },
  { stage: 'fitted', says: 'fitted: new part soldered in' },
  { stage: 'calibrated', says: 'calibrated: after the numbers were written' },
  { stage: 'recheck', says: 'recheck: once more, later' },
] as const;

/** One line that names a survey: "fitted, today 09:12 · Bench pad · A1B2"; `name` is its pad's where that is said otherwise. */
export function surveyLine(survey: SurveySummary, now: Date, name = padName(survey).says): string {
  return `${survey.stage ?? 'no stage'}, ${whenText(survey.startedAt, now)} · ${name}`;
}

/** The four things a hand does for one release, in order, as a survey names its phase. */
export const RELEASE_PHASES = [
  { phase: 'waiting', says: 'ready' },
  { phase: 'pushing', says: 'push' },
  { phase: 'settling', says: 'let go, settling' },
  { phase: 'dwelling', says: 'dwelling' },
] as const;

export type PlannedCapture = SurveyRunState['captures'][number];
export type SurveyPurpose = PlannedCapture['purpose'];

/** The capture that is under way, or next while the survey waits for the word to begin; null once all are over. */
export function currentOf({ captures, current }: SurveyRunState): PlannedCapture | null {
  return current === null ? null : (captures[current] ?? null);
}

const PURPOSE_WORDS: Readonly<Record<SurveyPurpose, string>> = {
  warmUp: 'warm-up',
  rest: 'rest',
  rim: 'gate',
  travel: 'travel',
  flick: 'flicks',
  disturbance: 'disturbance',
  inputs: 'inputs',
};

/** E.g. `left stick, gate`, `left stick, rest while it rumbles`, `inputs`. */
export function captureWords({ stick, purpose, of }: PlannedCapture): string {
  const what = of === null ? PURPOSE_WORDS[purpose] : disturbanceWords[of];
  return stick === null ? what : `${stick} stick, ${what}`;
}

/** What one word of the hand is about: it is repeated or dropped as one. */
export const ONE_WORDS: Readonly<Record<SurveyPurpose, string>> = {
  warmUp: 'release',
  rest: 'release',
  rim: 'turn',
  travel: 'sweep',
  flick: 'flick',
  disturbance: 'dwell',
  inputs: 'control',
};

/** Everything taken in the capture under way, counted: where it grows something was taken. */
export function takenIn({ releases, turns, sweeps, flicks, warmUp, inputs }: SurveyRunState): number {
  const seen = inputs?.filter(({ missing }) => missing === null).length ?? 0;
  const each = [releases.taken, turns.clockwise, turns.counterClockwise, sweeps.taken.length, flicks.taken.length];
  return each.reduce((sum, count) => sum + count, seen + (warmUp?.dwells ?? 0));
}

/** Whether the survey still waits for the hand. */
export function isRunning({ step }: SurveyRunState): boolean {
  return step !== 'done' && step !== 'aborted' && step !== 'failed';
}
