// @vitest-environment happy-dom
/** The panel that says what a stick's gate is known from, over a bench that answers as it does. */
import { flushSync } from 'svelte';
import { expect, it, vi } from 'vitest';
import { done } from '../../../core/result.ts';
import GatePanel from '../../../renderer/findings/GatePanel.svelte';
import { GATE_UNKNOWN, GATE_WORDS } from '../../../renderer/findings/gate-words.ts';
import { provideBench } from '../../../renderer/frame/bench-context.ts';
import type { SurveyDetails } from '../../../renderer/stick/opened-survey.svelte.ts';
import { provideSurveys, SurveysState } from '../../../renderer/surveys/surveys-state.svelte.ts';
import type { SurveySummary } from '../../../renderer/surveys/survey-words.ts';
import { surveyOf } from '../support/bench-stick.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { showPart, sole } from '../support/show-part.ts';

const pad = { vendorId: 0x1209, productId: 0x000a, serial: 'A1', unit: null };
const kept = (survey: string, serial: string | null): SurveySummary => ({
  survey,
  name: survey,
  startedAt: '2024-01-02T03:04:05Z',
  stage: 'fitted',
  product: 'Bench pad',
  simulated: false,
  finished: true,
  pad: { ...pad, serial },
  domain: 'sensor',
});
const LISTED = [kept('s1', 'A1'), kept('own', 'A1'), kept('untold', null), kept('rest-alone', 'A1')];

async function panel(gates: SurveyDetails['gates'], offered: string[] = ['own', 'untold']) {
  const bench = scriptedBench({ 'gates.offered': () => done(offered), 'gates.choose': () => done({}) });
  const surveys = new SurveysState(bench);
  surveys.list = LISTED;
  const details = { ...surveyOf({}), pad, gates };
  const shown = showPart(
    GatePanel,
    () => {
      provideBench(bench);
      provideSurveys(surveys);
    },
    { details, stick: 'left' as const, judging: false },
  );
  const [source, told] = [
    sole(shown, 'select', /^What the gate is known from$/u),
    sole(shown, 'select', /^Survey that tells of the gate$/u),
  ];
  await vi.waitFor(() => expect(shown.textContent).not.toContain('Looking'));
  const pick = (select: HTMLSelectElement, value: string): void => {
    select.value = value;
    select.dispatchEvent(new Event('change', { bubbles: true }));
    flushSync();
  };
  const chosen = () => bench.asked.filter(({ name }) => name === 'gates.choose').map(({ request }) => request);
  return { shown, source, told, pick, chosen };
}

const optionsOf = (select: HTMLSelectElement): string[] => [...select.options].map(({ value }) => value);

it('is unknown until a hand says otherwise, and says what that means', async () => {
  const { shown, source, told } = await panel({});
  expect(source.value).toBe('');
  expect(source.options[0]?.textContent).toBe('not known: ± 0.3 % out of round');
  expect(shown.textContent).toContain(GATE_UNKNOWN.means);
  expect(told.disabled).toBe(true);
  expect(optionsOf(told)).toEqual(['', 'own', 'untold']);
  expect(shown.querySelector('button')).toBeNull();
});

it('takes what the other survey is of and which it is, and tells of each choice when to use it', async () => {
  const { shown, source, told, pick, chosen } = await panel({});
  pick(source, 'reference part');
  expect(shown.textContent).toContain(GATE_WORDS['reference part'].means);
  expect(shown.textContent).toContain(
    'Choose its survey; those of this pad with a rest and slow turns of the left stick are listed.',
  );
  expect([told.disabled, chosen()]).toEqual([false, []]);
  pick(told, 'own');
  expect(chosen()).toEqual([{ survey: 's1', stick: 'left', choice: { from: 'reference part', survey: 'own' } }]);
});

it('says so where it is not sure that the other survey is of this pad', async () => {
  const doubted = await panel({ left: { from: 'earlier part', survey: 'untold', problem: null } });
  expect(doubted.shown.textContent).toContain(
    'Nothing known of both tells whether that survey is of this very pad (Bench pad, 1209:000a, serial number not known)',
  );
  const sure = await panel({ left: { from: 'earlier part', survey: 'own', problem: null } });
  expect(sure.shown.textContent).not.toContain('Nothing known of both');
});

it('is taken back with one click', async () => {
  const { shown, source, chosen } = await panel({ left: { from: 'ring turned', survey: 'own', problem: null } });
  expect(source.value).toBe('ring turned');
  sole(shown, 'button', /take back what it is known from$/u).click();
  flushSync();
  expect(chosen()).toEqual([{ survey: 's1', stick: 'left', choice: null }]);
  expect(source.value).toBe('');
});

it('says why a gate is not known after all, and where no survey tells of it', async () => {
  const problem = { code: 'gate-survey-gone', says: 'The survey is no longer there.' };
  const { shown } = await panel({ left: { from: 'ring turned', survey: 'gone', problem } });
  expect(shown.querySelector('[role=alert]')?.textContent).toContain('The survey is no longer there.');
  const none = await panel({}, []);
  expect(none.shown.textContent).toContain(
    'No other survey of this pad holds a rest and slow turns of the left stick.',
  );
  expect(optionsOf(none.told)).toEqual(['']);
});
