import { describe, expect, it } from 'vitest';
import { propose } from '../../../core/proposal/propose.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import { failed, type Result } from '../../../core/result.ts';
import { chainOf } from '../../../core/zones/one-zone.ts';
import type { SurveyDetails } from '../../../renderer/stick/opened-survey.svelte.ts';
import { StickOnBench, type BenchSources } from '../../../renderer/stick/stick-on-bench.svelte.ts';
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

function onBench(part: Partial<BenchSources> = {}, details: SurveyDetails = survey) {
  const bench = scriptedBench({
    'surveys.open': (request) =>
      request.survey === details.survey
        ? { ok: true, value: { ...details } }
        : failed('no-survey', 'There is no such survey; choose another.'),
    'surveys.propose': (request) => proposeFor(details, request),
  });
  const selected = { stick: 'left' as StickId, direction: null as number | null };
  const state = new StickOnBench({
    chain: { chain: () => chainOf(zone), keep: () => Promise.resolve() },
    bench,
    stick: () => selected.stick,
    direction: () => selected.direction,
    select: (direction) => (selected.direction = direction),
    finding: () => null,
    image: () => null,
    store: memoryStore(),
    ...part,
  });
  const open = async (handle: string | null): Promise<void> => {
    await state.survey.open(handle);
    await state.proposals.ensure();
  };
  return { state, bench, selected, open };
}

describe('the stick on the bench', () => {
  it('is nothing before a survey is opened', () => {
    const { state } = onBench();
    expect([state.evidence, state.standings, state.proposals.shown]).toEqual([null, [], null]);
  });

  it('compares the mapping of now with the proposed one on the same captures', async () => {
    const { state, open } = onBench();
    await open('s1');
    expect(state.standings.map(({ tone }) => tone)).toEqual(['now', 'proposed']);
    const [now, proposed] = state.standings;
    expect(now?.rim?.leastReach?.value).toBeLessThan(1);
    expect(proposed?.rim?.leastReach?.value).toBeGreaterThanOrEqual(1.01 - 1e-9);
    expect(proposed?.rest?.offset.magnitude).toBeLessThan(now?.rest?.offset.magnitude ?? 0);
  });

  it('selects the weakest direction where none is selected, and keeps one that is', async () => {
    const first = onBench();
    await first.open('s1');
    first.state.direction.selectWeakest();
    expect(first.selected.direction).toBe(first.state.standings[0]?.rim?.leastReach?.angle);
    const second = onBench({ direction: () => 55 });
    await second.open('s1');
    second.state.direction.selectWeakest();
    expect(second.selected.direction).toBeNull();
  });

  it('shows the direction that is pointed at before the selected one', async () => {
    const { state, open } = onBench({ direction: () => 55 });
    await open('s1');
    state.direction.point(120);
    expect(state.direction.now).toBe(120);
    state.direction.point(null);
    expect(state.direction.now).toBe(55);
    expect(state.direction.rimPoint?.x).toBeGreaterThan(2020);
  });

  it('proposes for every stick of the survey, the shown one first', async () => {
    const { state, bench, open } = onBench({ stick: () => 'right' });
    await open('s1');
    const sticks = bench.asked.flatMap(({ name, request }) => (name === 'surveys.propose' ? [request] : []));
    expect(sticks).toMatchObject([{ stick: 'right' }, { stick: 'left' }]);
    expect(Object.keys(state.proposals.mappings)).toEqual(['left']);
  });

  it('has one proposal: whoever wants it asks for none a second time', async () => {
    const { state, bench, open } = onBench();
    await open('s1');
    const asked = bench.asked.length;
    await state.proposals.ensure();
    expect(bench.asked).toHaveLength(asked);
    expect(state.proposals.mappings.left).toBe(state.proposals.shown?.mapping);
    expect(state.standings[1]?.mapping).toBe(state.proposals.shown?.mapping);
  });

  it('says why a stick has no proposal and still shows how it stands now', async () => {
    const { state, open } = onBench({ stick: () => 'right' });
    await open('s1');
    expect(state.proposals.shown).toBeNull();
    expect(state.proposals.problemOf('right')?.says).toContain('not covered');
    expect(state.standings.map(({ tone }) => tone)).toEqual(['now']);
  });

  it('asks again when another aim is wanted, with the rest of the wish as it was', async () => {
    const { state, bench, open } = onBench();
    await open('s1');
    await state.proposals.askFor({ aim: 'even' });
    expect(bench.asked.at(-1)?.request).toMatchObject({ wish: { aim: 'even', centreBy: 'steadiest', guard: 0.01 } });
    expect(state.proposals.shown?.aim).toBe('even');
  });

  it('keeps what was wished for a survey over another survey and a reload', async () => {
    const store = memoryStore();
    const { state, open } = onBench({ store });
    await open('s1');
    await state.proposals.askFor({ aim: 'even', guard: 0.02 });
    const wished = state.proposals.mappings;
    await open(null);
    expect(state.proposals.wish.aim).toBe('full-reach');
    await open('s1');
    expect(state.proposals.wish).toMatchObject({ aim: 'even', guard: 0.02 });
    const again = onBench({ store });
    await again.open('s1');
    expect(again.state.proposals.mappings).toEqual(wished);
  });

  it('has no proposal of a survey as it was before it was judged anew', async () => {
    const { state, open } = onBench();
    await open('s1');
    await state.survey.open(null);
    await state.survey.open('s1');
    const computing = state.proposals.ensure();
    expect([state.proposals.computing, state.proposals.mappings]).toEqual([true, {}]);
    await computing;
    expect(state.proposals.computing).toBe(false);
  });

  it('answers for another zone at once, on every mapping', async () => {
    const { state, bench, open } = onBench();
    await open('s1');
    const before = state.standings[0]?.zones.leaks?.leaking;
    const asked = bench.asked.length;
    state.chain.setZone({ inner: 0 });
    expect([before, state.standings[0]?.zones.leaks?.leaking]).toEqual([0, 24]);
    expect(bench.asked).toHaveLength(asked);
  });

  it('puts everything away when no survey is selected', async () => {
    const { state, open } = onBench();
    await open('s1');
    await open(null);
    expect([state.details, state.proposals.shown, state.standings]).toEqual([null, null, []]);
  });

  it('drops the answer to a wish that was changed meanwhile', async () => {
    const { state, bench, open } = onBench();
    await open('s1');
    await Promise.all([state.proposals.askFor({ aim: 'edges' }), state.proposals.askFor({ aim: 'even' })]);
    expect(state.proposals.shown?.aim).toBe('even');
    expect(bench.asked.at(-1)?.request).toMatchObject({ wish: { aim: 'even' } });
    expect(state.proposals.proposing).toBe(false);
  });
});
