import { describe, expect, it } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { OpenedSurvey } from '../../../renderer/stick/opened-survey.svelte.ts';
import { surveyOf } from '../support/bench-stick.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

function opened(): OpenedSurvey {
  return new OpenedSurvey(
    scriptedBench({
      'surveys.open': ({ survey }) =>
        survey === 'gone' ? failed('no-survey', 'It is gone.') : done({ ...surveyOf({}), survey }),
    }),
  );
}

describe('the survey on the bench', () => {
  it('says why it cannot be opened, and forgets that when it is put away', async () => {
    const survey = opened();
    await survey.open('gone');
    expect([survey.details, survey.loading, survey.problem?.says]).toEqual([null, false, 'It is gone.']);
    await survey.open(null);
    expect([survey.problem, survey.loading]).toEqual([null, false]);
  });

  it('shows nothing of the one before while another is read', async () => {
    const survey = opened();
    await survey.open('s1');
    const opening = survey.open('s2');
    expect([survey.details, survey.loading]).toEqual([null, true]);
    await opening;
    expect([survey.details?.survey, survey.loading]).toEqual(['s2', false]);
  });

  it('stands while the same one is judged anew', async () => {
    const survey = opened();
    await survey.open('s1');
    const again = survey.open('s1');
    expect([survey.details?.survey, survey.loading]).toEqual(['s1', true]);
    await again;
    expect(survey.loading).toBe(false);
  });

  it('is opened again when it is judged by other terms, and no other is', async () => {
    const bench = scriptedBench({ 'surveys.open': ({ survey }) => done({ ...surveyOf({}), survey }) });
    const survey = new OpenedSurvey(bench);
    const end = survey.follow();
    await survey.open('s1');
    bench.tell('survey.judged', { survey: 's2' });
    expect(bench.asked).toHaveLength(1);
    bench.tell('survey.judged', { survey: 's1' });
    expect(bench.asked.map(({ request }) => request)).toEqual([{ survey: 's1' }, { survey: 's1' }]);
    end();
    bench.tell('survey.judged', { survey: 's1' });
    expect(bench.asked).toHaveLength(2);
  });

  it('is the one asked for last, whichever answer comes first', async () => {
    const answers: ((value: never) => void)[] = [];
    const survey = new OpenedSurvey({
      ...scriptedBench({}),
      call: () => new Promise((resolve) => answers.push(resolve)),
    });
    const [first, second] = [survey.open('s1'), survey.open('s2')];
    answers[1]?.(done({ ...surveyOf({}), survey: 's2' }) as never);
    await second;
    answers[0]?.(done(surveyOf({})) as never);
    await first;
    expect(survey.details?.survey).toBe('s2');
  });
});
