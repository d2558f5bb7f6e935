import { expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { FindingsState } from '../../../renderer/findings/findings-state.svelte.ts';
import { judgedNote } from '../../../renderer/findings/judged-note.svelte.ts';
import { emptyReport } from '../../support/empty-report.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { surveyOf } from '../support/bench-stick.ts';

function stateOf(fails = false): { state: FindingsState; selected: { stick: 'left' | 'right' } } {
  const report = { ...emptyReport(), verdict: { left: 'keep' as const }, verdictWhy: { left: 'All holds.' } };
  const bench = scriptedBench({
    'surveys.open': () => (fails ? failed('no-survey', 'It is gone.') : done({ ...surveyOf({}), report })),
  });
  const selected = { stick: 'left' as 'left' | 'right' };
  return { state: new FindingsState({ bench, stick: () => selected.stick }), selected };
}

test('an opened survey is shown for the selected stick and named for the left column', async () => {
  const { state } = stateOf();
  await state.open('s1');
  expect(state.shown?.reason).toBe('All holds.');
  expect(judgedNote.of('s1')).toBe('nothing judged');
  expect(judgedNote.of('s2')).toBeNull();
});

test('a stick that the survey does not hold has nothing to show', async () => {
  const { state, selected } = stateOf();
  selected.stick = 'right';
  await state.open('s1');
  expect([state.shown, state.report === null]).toEqual([null, false]);
});

test('a survey that cannot be opened says why, and putting it away forgets it', async () => {
  const { state } = stateOf(true);
  await state.open('s1');
  expect([state.report, state.problem?.says]).toEqual([null, 'It is gone.']);
  await state.open(null);
  expect([state.problem, state.loading]).toEqual([null, false]);
});

test('while the same survey is judged anew its old judgement stays', async () => {
  const { state } = stateOf();
  await state.open('s1');
  const again = state.open('s1');
  expect([state.report === null, state.loading]).toEqual([false, true]);
  await again;
});
