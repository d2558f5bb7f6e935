import { describe, expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { toBase64 } from '../../../renderer/kit/page/file-pieces.ts';
import { SurveysState, type SurveyPlan } from '../../../renderer/surveys/surveys-state.svelte.ts';
import type { SurveySummary } from '../../../renderer/surveys/survey-words.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { surveyState } from '../support/survey-states.ts';

const kept: SurveySummary = {
  survey: 'k0',
  name: 'first.padlog',
  startedAt: '2026-01-02T03:04:05Z',
  stage: null,
  product: 'Pad',
  simulated: false,
  finished: true,
  pad: { vendorId: 1, productId: 2, serial: null, unit: null },
  domain: 'sensor',
};
const plan: SurveyPlan = {
  pad: 'p1',
  stage: 'fitted',
  sticks: ['left'],
  steps: ['rest', 'rim'],
  disturbances: [],
  releases: 24,
  turns: 3,
  sweeps: 2,
  flicks: 2,
  confirmButton: null,
};

describe('the surveys', () => {
  test('are listed and followed', async () => {
    const bench = scriptedBench({ 'surveys.list': () => done([kept]) });
    const surveys = new SurveysState(bench);
    await surveys.follow();
    expect(surveys.list).toEqual([kept]);
    bench.tell('surveys.changed', []);
    expect(surveys.list).toEqual([]);
  });

  test('one that is started runs until its state says otherwise', async () => {
    const bench = scriptedBench({
      'surveys.list': () => done([]),
      'survey.start': () => done(surveyState({ step: 'ready' })),
    });
    const surveys = new SurveysState(bench);
    await surveys.follow();
    expect(await surveys.start(plan)).toBe(true);
    expect(surveys.running).toBe(true);
    surveys.putAway();
    expect(surveys.run?.survey).toBe('k1');
    bench.tell('survey.state', surveyState({ step: 'done' }));
    expect(surveys.running).toBe(false);
    surveys.putAway();
    expect(surveys.run).toBeNull();
  });

  test('one that runs already is taken up by a page that comes later, an ended one is not', async () => {
    const bench = scriptedBench({ 'surveys.list': () => done([]) });
    const surveys = new SurveysState(bench);
    await surveys.follow();
    bench.tell('survey.state', surveyState({ step: 'done' }));
    expect(surveys.run).toBeNull();
    bench.tell('survey.state', surveyState({ survey: 'k7' }));
    expect(surveys.run?.survey).toBe('k7');
    bench.tell('survey.state', surveyState({ survey: 'k8' }));
    expect(surveys.run?.survey).toBe('k7');
  });

  test('one under way is asked for by a page that comes later, and put away where it ended while cut off', async () => {
    const bench = scriptedBench({
      'surveys.list': () => done([]),
      'surveys.underway': () => done([surveyState({ survey: 'k7', prompt: 'Let go.' })]),
    });
    const surveys = new SurveysState(bench);
    const end = await surveys.follow();
    expect(surveys.run).toMatchObject({ survey: 'k7', prompt: 'Let go.' });
    end();
    bench.answers['surveys.underway'] = () => done([surveyState({ survey: 'k8' }), surveyState({ survey: 'k7' })]);
    (await surveys.follow())();
    expect(surveys.run?.survey).toBe('k7');
    bench.answers['surveys.underway'] = () => done([]);
    await surveys.follow();
    expect(surveys.run).toBeNull();
    bench.tell('survey.state', surveyState({ survey: 'k9' }));
    bench.tell('survey.state', surveyState({ survey: 'k9', step: 'done' }));
    await surveys.follow();
    expect(surveys.run?.step).toBe('done');
  });

  test('a refused start is told and leaves nothing running', async () => {
    const bench = scriptedBench({ 'survey.start': () => failed('survey-underway', 'End the other one first.') });
    const surveys = new SurveysState(bench);
    expect(await surveys.start(plan)).toBe(false);
    expect(surveys.run).toBeNull();
    expect(surveys.problem?.code).toBe('survey-underway');
  });

  test('words go to the survey that runs, and to none without one', async () => {
    const bench = scriptedBench({
      'survey.start': () => done(surveyState()),
      'survey.say': ({ what }) => done(surveyState({ prompt: what })),
    });
    const surveys = new SurveysState(bench);
    await surveys.say('confirm');
    expect(bench.asked).toEqual([]);
    await surveys.start(plan);
    await surveys.say('repeat');
    expect(surveys.run?.prompt).toBe('repeat');
  });

  test('a log is imported in order and its survey comes with the last piece', async () => {
    const bench = scriptedBench({ 'surveys.import': ({ last }) => done({ survey: last ? kept : null }) });
    const surveys = new SurveysState(bench);
    const file = new File([new Uint8Array(600_000)], 'x.padlog');
    expect(await surveys.import(file)).toEqual(kept);
    const pieces = bench.asked.map((one) => one.request as { upload: string; last: boolean; name: string });
    expect(pieces.map((piece) => piece.last)).toEqual([false, true]);
    expect(new Set(pieces.map((piece) => piece.upload)).size).toBe(1);
    expect(surveys.importing).toBeNull();
  });

  test('an import that is refused stops at once and says why', async () => {
    const bench = scriptedBench({ 'surveys.import': () => failed('log-unknown', 'This is no report log.') });
    const surveys = new SurveysState(bench);
    expect(await surveys.import(new File([new Uint8Array(600_000)], 'x'))).toBeNull();
    expect(bench.asked).toHaveLength(1);
    expect(surveys.problem?.code).toBe('log-unknown');
  });

  test('an export puts the pieces together again', async () => {
    const whole = Uint8Array.of(1, 2, 3, 4, 5);
    const bench = scriptedBench({
      'surveys.export': ({ from }) =>
        done({ piece: toBase64(whole.subarray(from, from + 2)), next: from + 2 < whole.length ? from + 2 : null }),
    });
    const blob = await new SurveysState(bench).export('k0');
    expect([...new Uint8Array(await blob!.arrayBuffer())]).toEqual([...whole]);
  });

  test('a damaged piece ends the export with a problem', async () => {
    const bench = scriptedBench({ 'surveys.export': () => done({ piece: '***', next: null }) });
    const surveys = new SurveysState(bench);
    expect(await surveys.export('k0')).toBeNull();
    expect(surveys.problem?.code).toBe('export-broken');
  });
});
