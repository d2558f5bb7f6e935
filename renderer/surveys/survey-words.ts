/** Surveys in the words of the screen. */
import type { EventPayload, Reply } from '../../shared/contract.ts';

export type SurveySummary = Reply<'surveys.list'>[number];
export type SurveyRunState = EventPayload<'survey.state'>;

export const STAGES = [
  { stage: 'received', says: 'received: as it came in' },
  { stage: 'fitted', says: 'fitted: new part soldered in' },
  { stage: 'calibrated', says: 'calibrated: after the numbers were written' },
  { stage: 'recheck', says: 'recheck: once more, later' },
] as const;

/** E.g. "today 09:12", "24 Nov 09:12", "24 Nov 2025 09:12". */
export function whenText(startedAt: string, now: Date): string {
  const when = new Date(startedAt);
  if (Number.isNaN(when.getTime())) return 'time not known';
  const clock = `${two(when.getHours())}:${two(when.getMinutes())}`;
  if (when.toDateString() === now.toDateString()) return `today ${clock}`;
  const month = when.toLocaleString('en-GB', { month: 'short' });
  const year = when.getFullYear() === now.getFullYear() ? '' : ` ${when.getFullYear()}`;
  return `${when.getDate()} ${month}${year} ${clock}`;
}

/** One line that names a survey in a list: "fitted, today 09:12 · Bench pad 3". */
export function surveyLine(survey: SurveySummary, now: Date): string {
  return `${survey.stage ?? 'no stage'}, ${whenText(survey.startedAt, now)} · ${survey.product}`;
}

/** The four things a hand does for one release, in order, as a survey names its phase. */
export const RELEASE_PHASES = [
  { phase: 'waiting', says: 'ready' },
  { phase: 'pushing', says: 'push' },
  { phase: 'settling', says: 'let go, settling' },
  { phase: 'dwelling', says: 'dwelling' },
] as const;

/** What is measured now, or next while the survey waits for the word to begin. */
export function purposeOf(state: SurveyRunState): 'rest' | 'rim' {
  if (state.step === 'rest' || state.step === 'rim') return state.step;
  return state.sticks.find((one) => one.stick === state.stick)?.rest === 'open' ? 'rest' : 'rim';
}

/** Whether the survey still waits for the hand. */
export function isRunning(state: SurveyRunState): boolean {
  return state.step === 'ready' || state.step === 'rest' || state.step === 'rim';
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
