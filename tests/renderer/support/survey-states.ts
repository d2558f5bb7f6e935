/** States of a survey as a bench would tell them. */
import type { SurveyRunState } from '../../../renderer/surveys/survey-words.ts';

export function surveyState(part: Partial<SurveyRunState> = {}): SurveyRunState {
  return {
    survey: 'k1',
    pad: 'p1',
    stage: 'fitted',
    stick: 'left',
    step: 'rest',
    prompt: 'Push the left stick up.',
    promptNumber: 1,
    toward: 90,
    phase: 'pushing',
    releases: { taken: 0, asked: 24 },
    turns: { clockwise: 0, counterClockwise: 0, asked: 3, underway: 0 },
    covered: [],
    uncovered: [],
    rests: [],
    sweeps: { taken: [], asked: 8, along: null },
    flicks: { taken: [], asked: 8 },
    warmUp: null,
    inputs: null,
    captures: [
      { stick: 'left', purpose: 'rest', of: null, state: 'open' },
      { stick: 'left', purpose: 'rim', of: null, state: 'open' },
    ],
    current: 0,
    confirmButton: null,
    problem: null,
    ...part,
  };
}
