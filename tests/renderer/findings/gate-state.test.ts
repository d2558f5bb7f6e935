/** What a stick's gate is known from, as the panel of the Findings view picks it. */
import { describe, expect, it } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { GateState, type GateInForce } from '../../../renderer/findings/gate-state.svelte.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const LISTED = [{ survey: 's1' }, { survey: 's0' }];

function panel(inForce: { now: GateInForce }, refuses = false) {
  const bench = scriptedBench({
    'gates.offered': () => done(['s0']),
    'gates.choose': () => (refuses ? failed('survey-unknown', 'It is gone.') : done({})),
  });
  const gate = new GateState({ bench, survey: 's1', stick: 'left', inForce: () => inForce.now });
  const chosen = () => bench.asked.filter(({ name }) => name === 'gates.choose').map(({ request }) => request);
  return { bench, gate, chosen };
}

describe('the gate of a stick', () => {
  it('is offered the surveys that tell of it, and asks for none where no other survey is listed', async () => {
    const { bench, gate } = panel({ now: null });
    expect(gate.offered).toBeNull();
    await gate.look([{ survey: 's1' }]);
    expect([gate.offered, bench.asked]).toEqual([[], []]);
    await gate.look(LISTED);
    expect(gate.offered).toEqual(['s0']);
    expect(bench.asked).toEqual([{ name: 'gates.offered', request: { survey: 's1', stick: 'left' } }]);
  });

  it('is chosen once both are said: what the other survey is of, and which it is', async () => {
    const { gate, chosen } = panel({ now: null });
    await gate.pickSource('reference part');
    expect([gate.from, gate.survey, chosen()]).toEqual(['reference part', null, []]);
    await gate.pickSurvey('s0');
    expect([gate.from, gate.survey]).toEqual(['reference part', 's0']);
    expect(chosen()).toEqual([{ survey: 's1', stick: 'left', choice: { from: 'reference part', survey: 's0' } }]);
  });

  it('is what the survey was judged by, once that is known', async () => {
    const inForce: { now: GateInForce } = { now: null };
    const { gate } = panel(inForce);
    await gate.pickSource('ring turned');
    await gate.pickSurvey('s0');
    inForce.now = { from: 'earlier part', survey: 's0' };
    expect(gate.from).toBe('earlier part');
  });

  it('is taken back with one word', async () => {
    const { gate, chosen } = panel({ now: { from: 'earlier part', survey: 's0' } });
    expect([gate.from, gate.survey]).toEqual(['earlier part', 's0']);
    await gate.pickSource(null);
    expect([gate.from, gate.survey]).toEqual([null, null]);
    expect(chosen()).toEqual([{ survey: 's1', stick: 'left', choice: null }]);
  });

  it('is taken back even while the bench still looks into the survey that was chosen', async () => {
    const waiting: (() => void)[] = [];
    const bench = scriptedBench({ 'gates.choose': () => done({}) });
    const slow = {
      ...bench,
      call: ((name, request) => {
        const reply = bench.call(name, request);
        return new Promise((resolve) => waiting.push(() => resolve(reply)));
      }) as typeof bench.call,
    };
    const gate = new GateState({ bench: slow, survey: 's1', stick: 'left', inForce: () => null });
    await gate.pickSource('ring turned');
    const chosen = gate.pickSurvey('s0');
    expect(gate.choosing).toBe(true);
    const back = gate.pickSource(null);
    waiting[0]?.();
    await chosen;
    expect(gate.choosing).toBe(true);
    waiting[1]?.();
    await back;
    expect([gate.choosing, gate.from, gate.survey]).toEqual([false, null, null]);
    expect(bench.asked.map(({ request }) => request)).toEqual([
      { survey: 's1', stick: 'left', choice: { from: 'ring turned', survey: 's0' } },
      { survey: 's1', stick: 'left', choice: null },
    ]);
  });

  it('keeps what the other survey is of where that one is refused and nothing was in force', async () => {
    const { gate } = panel({ now: null }, true);
    await gate.pickSource('ring turned');
    await gate.pickSurvey('s2');
    expect([gate.from, gate.survey, gate.problem?.says]).toEqual(['ring turned', null, 'It is gone.']);
  });

  it('stays as it was where the bench refuses, and says why', async () => {
    const { gate } = panel({ now: { from: 'earlier part', survey: 's0' } }, true);
    await gate.pickSource('ring turned');
    expect([gate.from, gate.problem?.says]).toEqual(['earlier part', 'It is gone.']);
    await gate.pickSurvey('s2');
    expect(gate.survey).toBe('s0');
  });
});
