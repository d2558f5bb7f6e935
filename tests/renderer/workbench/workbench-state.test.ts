import { describe, expect, it } from 'vitest';
import { propose } from '../../../core/proposal/propose.ts';
import { failed, type Result } from '../../../core/result.ts';
import {
  WorkbenchState,
  type SurveyDetails,
  type WorkbenchSources,
} from '../../../renderer/views/workbench/workbench-state.svelte.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { asSent, mapping, memoryStore, oneRelease, surveyOf, wholeStick, zone } from '../support/bench-stick.ts';

const survey = surveyOf({ left: asSent(wholeStick(), mapping), right: asSent(oneRelease(), mapping) });

/** What a bench does with `surveys.propose`, on the same evidence. */
function proposeFor(
  details: SurveyDetails,
  { stick, wish }: Request<'surveys.propose'>,
): Result<Reply<'surveys.propose'>> {
  const found = details.sticks[stick];
  if (found === undefined) return failed('no-stick', 'The survey holds nothing of this stick.');
  const made = propose(found.evidence, {
    ...wish,
    widestGap: 10,
    current: found.current,
    limits: { whole: true, least: 0, greatest: 4095 },
    seed: 1,
  });
  return made.ok
    ? { ok: true, value: structuredClone({ ...made.value, reasons: [...made.value.reasons], hides: null }) }
    : made;
}

function workbench(part: Partial<WorkbenchSources> = {}, details: SurveyDetails = survey) {
  const bench = scriptedBench({
    'surveys.open': (request) =>
      request.survey === details.survey
        ? { ok: true, value: details }
        : failed('no-survey', 'There is no such survey; choose another.'),
    'surveys.propose': (request) => proposeFor(details, request),
  });
  const selected = { stick: 'left' as 'left' | 'right', direction: null as number | null };
  const state = new WorkbenchState({
    chain: () => null,
    bench,
    stick: () => selected.stick,
    direction: () => selected.direction,
    select: (direction) => (selected.direction = direction),
    finding: () => null,
    zone: () => zone,
    store: memoryStore(),
    ...part,
  });
  return { state, bench, selected };
}

describe('the Workbench', () => {
  it('has nothing before a survey is opened', () => {
    const { state } = workbench();
    expect([state.evidence, state.standings, state.profile, state.ledger.length > 0]).toEqual([null, [], null, true]);
  });

  it('compares the mapping of now with the proposed one on the same captures', async () => {
    const { state } = workbench();
    await state.open('s1');
    expect(state.standings.map(({ tone }) => tone)).toEqual(['now', 'proposed']);
    const [now, proposed] = state.standings;
    expect(now?.rim?.leastReach?.value).toBeLessThan(1);
    expect(proposed?.rim?.leastReach?.value).toBeGreaterThanOrEqual(1.01 - 1e-9);
    expect(proposed?.rest?.offset.magnitude).toBeLessThan(now?.rest?.offset.magnitude ?? 0);
  });

  it('selects the weakest direction where none is selected, and keeps one that is', async () => {
    const first = workbench();
    await first.state.open('s1');
    expect(first.selected.direction).toBe(first.state.standings[0]?.rim?.leastReach?.angle);
    const second = workbench({ direction: () => 55 });
    await second.state.open('s1');
    expect(second.selected.direction).toBeNull();
  });

  it('shows the direction that is pointed at before the selected one', async () => {
    const { state } = workbench({ direction: () => 55 });
    await state.open('s1');
    state.point(120);
    expect(state.direction).toBe(120);
    state.point(null);
    expect(state.direction).toBe(55);
    expect(state.rimPoint?.x).toBeGreaterThan(2020);
  });

  it('proposes for every stick of the survey, so that one file can hold them', async () => {
    const { state, bench } = workbench();
    await state.open('s1');
    expect(bench.asked.filter(({ name }) => name === 'surveys.propose')).toHaveLength(2);
    expect(Object.keys(state.proposedMappings)).toEqual(['left']);
  });

  it('says why a stick has no proposal and still shows how it stands now', async () => {
    const { state } = workbench({ stick: () => 'right' });
    await state.open('s1');
    expect(state.proposal).toBeNull();
    expect(state.proposalProblem?.says).toContain('not covered');
    expect(state.standings.map(({ tone }) => tone)).toEqual(['now']);
    expect(state.missing[0]).toMatch(/^One release only/);
  });

  it('asks again when another aim is wanted, with the rest of the wish as it was', async () => {
    const { state, bench } = workbench();
    await state.open('s1');
    await state.askFor({ aim: 'even' });
    expect(bench.asked.at(-1)?.request).toMatchObject({ wish: { aim: 'even', centreBy: 'steadiest', guard: 0.01 } });
    expect(state.proposal?.aim).toBe('even');
  });

  it('answers for another zone at once, on every mapping', async () => {
    const { state, bench } = workbench();
    await state.open('s1');
    const before = state.standings[0]?.zones.leaks?.leaking;
    const asked = bench.asked.length;
    state.setZone({ inner: 0 });
    expect([before, state.standings[0]?.zones.leaks?.leaking]).toEqual([0, 24]);
    expect(state.plane?.series[0]?.zone).toBeNull();
    expect(bench.asked).toHaveLength(asked);
  });

  it('draws the response along the shown direction under both mappings', async () => {
    const { state } = workbench({ direction: () => 90 });
    await state.open('s1');
    expect(state.response.map(({ tone }) => tone)).toEqual(['now', 'proposed']);
    const outputs = state.response.map(({ points }) => points.at(-1) ?? 0);
    expect(outputs[0]).toBeCloseTo(state.standings[0]?.rim?.directions[18]?.seen ?? 0, 9);
    expect(outputs[1]).toBeGreaterThan(0.99);
  });

  it('tells why a survey cannot be opened', async () => {
    const { state } = workbench();
    await state.open('gone');
    expect(state.problem?.says).toContain('no such survey');
    expect([state.details, state.loading]).toEqual([null, false]);
  });

  it('puts everything away when no survey is selected', async () => {
    const { state } = workbench();
    await state.open('s1');
    await state.open(null);
    expect([state.details, state.proposal, state.standings]).toEqual([null, null, []]);
  });

  it('shows nothing of the survey before while another is read', async () => {
    const { state } = workbench();
    await state.open('s1');
    const opening = state.open('s2');
    expect([state.details, state.standings, state.loading]).toEqual([null, [], true]);
    await opening;
    expect([state.details, state.loading]).toEqual([null, false]);
  });

  it('asks for the shown stick first', async () => {
    const { state, bench } = workbench({ stick: () => 'right' });
    await state.open('s1');
    const sticks = bench.asked.flatMap(({ name, request }) => (name === 'surveys.propose' ? [request] : []));
    expect(sticks).toMatchObject([{ stick: 'right' }, { stick: 'left' }]);
  });

  it('drops the answer to a wish that was changed meanwhile', async () => {
    const { state, bench } = workbench();
    await state.open('s1');
    await Promise.all([state.askFor({ aim: 'edges' }), state.askFor({ aim: 'even' })]);
    expect(state.proposal?.aim).toBe('even');
    expect(bench.asked.at(-1)?.request).toMatchObject({ wish: { aim: 'even' } });
    expect(state.proposing).toBe(false);
  });

  it('keeps to the survey opened last when answers overtake each other', async () => {
    const answers: ((value: never) => void)[] = [];
    const other = { ...surveyOf({ left: asSent(oneRelease(), mapping) }), survey: 's2' };
    const { bench } = workbench();
    const { state } = workbench({
      bench: {
        ...bench,
        call: (name) =>
          name === 'surveys.open'
            ? new Promise((resolve) => answers.push(resolve))
            : Promise.resolve(failed('none', 'No proposal.')),
      },
    });
    const first = state.open('s1');
    const second = state.open('s2');
    answers[1]?.({ ok: true, value: other } as never);
    await second;
    answers[0]?.({ ok: true, value: survey } as never);
    await first;
    expect(state.details?.survey).toBe('s2');
  });
});
