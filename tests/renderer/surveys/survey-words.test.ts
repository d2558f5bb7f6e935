import { expect, test } from 'vitest';
import { restSpread } from '../../../renderer/surveys/rest-spread.ts';
import { captureWords, currentOf, isRunning, takenIn } from '../../../renderer/surveys/survey-words.ts';
import { surveyState } from '../support/survey-states.ts';

test('a survey runs until it is done, aborted or failed', () => {
  for (const step of ['ready', 'rest', 'rim', 'travel', 'inputs'] as const)
    expect(isRunning(surveyState({ step }))).toBe(true);
  for (const step of ['done', 'aborted', 'failed'] as const) expect(isRunning(surveyState({ step }))).toBe(false);
});

test('tells how far the rest points lie apart, from the second on', () => {
  expect(restSpread([{ x: 1, y: 1 }])).toContain('each release');
  expect(restSpread([{ x: 2060.2, y: 7 }, { x: 2066.1, y: 4 }])).toContain('within 6 counts in x, 3 in y'); // prettier-ignore
});

test('names the capture that is under way or next, and counts what was taken in it', () => {
  const captures = [
    { stick: 'left' as const, purpose: 'rim' as const, of: null, state: 'taken' as const },
    { stick: 'left' as const, purpose: 'disturbance' as const, of: 'rumble' as const, state: 'open' as const },
    { stick: null, purpose: 'inputs' as const, of: null, state: 'open' as const },
  ];
  expect(captures.map(captureWords)).toEqual(['left stick, gate', 'left stick, rest while it rumbles', 'inputs']);
  expect(currentOf(surveyState({ captures, current: 1 }))).toBe(captures[1]);
  expect(currentOf(surveyState({ captures, current: null }))).toBeNull();
  const sweeps = { taken: [0, 90], asked: 8, along: null };
  expect(takenIn(surveyState({ sweeps, releases: { taken: 3, asked: 24 } }))).toBe(5);
});
