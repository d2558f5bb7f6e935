/** What a survey is wished to take, as it is chosen before it begins. */
import type { Request } from '../../shared/contract.ts';
import type { SurveyPurpose } from './survey-words.ts';

type SurveyRequest = Request<'survey.start'>;
export type Disturbance = SurveyRequest['disturbances'][number];
type Count = 'releases' | 'turns' | 'sweeps' | 'flicks';

export interface Wishes extends Readonly<Pick<SurveyRequest, Count>> {
  readonly steps: readonly SurveyPurpose[];
  readonly disturbances: readonly Disturbance[];
}

/** 24 releases and 3 turns each way: with fewer than 12 and 3 less is stated. */
export const usualWishes: Wishes = {
  steps: ['rest', 'rim', 'travel', 'flick'],
  disturbances: [],
  releases: 24,
  turns: 3,
  sweeps: null,
  flicks: 2,
};

const MOST: Readonly<Record<Count, number>> = { releases: 200, turns: 20, sweeps: 10, flicks: 10 };

/** Counts that may be left open: the bench asks for as many as are needed. */
const OPEN: ReadonlySet<Count> = new Set<Count>(['sweeps']);

/** True where a survey can be started with them. */
export function areGood(wishes: Wishes): boolean {
  const counts = (Object.keys(MOST) as Count[]).every((count) => {
    const wished = wishes[count];
    return wished === null ? OPEN.has(count) : Number.isInteger(wished) && wished >= 1 && wished <= MOST[count];
  });
  return counts && requestOf(wishes).steps.length > 0;
}

/** True where the pad's inputs alone are wished for. */
export function wantsNoStick(wishes: Wishes): boolean {
  return requestOf(wishes).steps.every((step) => step === 'inputs');
}

/** Disturbances are a step where any is wished for. */
export function requestOf({ steps, disturbances, releases, turns, sweeps, flicks }: Wishes) {
  const plain = steps.filter((step) => step !== 'disturbance');
  return {
    steps: disturbances.length === 0 ? plain : [...plain, 'disturbance' as const],
    disturbances: [...disturbances],
    releases,
    turns,
    sweeps,
    flicks,
  };
}
