// @vitest-environment happy-dom
/** What findings say of the gate they are judged with, and the way from a finding to the choice. */
import { expect, it, vi } from 'vitest';
import { KNOW_THE_GATE } from '../../../core/findings/outline/say-suspect.ts';
import GateKnown from '../../../renderer/findings/GateKnown.svelte';
import GateOffer from '../../../renderer/findings/GateOffer.svelte';
import { provideSurveys, SurveysState } from '../../../renderer/surveys/surveys-state.svelte.ts';
import type { SurveySummary } from '../../../renderer/surveys/survey-words.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { showPart, sole } from '../support/show-part.ts';
import { makeFinding } from './make-finding.ts';

const told: SurveySummary = {
  survey: 's0',
  name: 'old part',
  startedAt: '2024-01-02T03:04:05',
  stage: 'received',
  product: 'Bench pad',
  simulated: false,
  finished: true,
  pad: { vendorId: 0x1209, productId: 0x000a, serial: 'A1', unit: null },
  domain: 'sensor',
};

function known(survey: string, problem: { code: string; says: string } | null): string {
  const surveys = new SurveysState(scriptedBench({}));
  surveys.list = [told];
  const gate = { survey, from: 'earlier part' as const, problem };
  return showPart(GateKnown, () => provideSurveys(surveys), { gate }).textContent.trim();
}

it('names what was surveyed, when, and of which pad', () => {
  expect(known('s0', null)).toBe(
    'Judged with the gate known from an earlier sound part in this shell; its survey: received, 2 Jan 2024 03:04 · Bench pad · A1.',
  );
  expect(known('s9', null)).toMatch(/; its survey: one that is not listed\.$/u);
});

it('says that the gate is not known, and why, where the survey no longer tells', () => {
  const gone = { code: 'gate-survey-gone', says: 'The survey that the gate was known from is no longer there.' };
  expect(known('s0', gone)).toBe(
    'Judged with the gate not known. The survey that the gate was known from is no longer there.',
  );
});

it('leads from a finding that the gate hides to the choice, and from no other', () => {
  const onchoose = vi.fn();
  const hidden = makeFinding({ against: [KNOW_THE_GATE] });
  sole(
    showPart(GateOffer, () => undefined, { finding: hidden, onchoose }),
    'button',
    /^look finer/u,
  ).click();
  expect(onchoose).toHaveBeenCalledTimes(1);
  const other = showPart(GateOffer, () => undefined, { finding: makeFinding({ against: ['Another.'] }), onchoose });
  expect(other.querySelector('button')).toBeNull();
});
