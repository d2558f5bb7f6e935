import { describe, expect, it } from 'vitest';
import { failed } from '../../../core/result.ts';
import { AgainstState } from '../../../renderer/stick/against-state.svelte.ts';
import type { SurveyDetails } from '../../../renderer/stick/opened-survey.svelte.ts';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { asSent, mapping, surveyOf, wholeStick, zone } from '../support/bench-stick.ts';

const narrow = { ...mapping, x: { min: 1200, centre: 2000, max: 2800 } };
const before: SurveyDetails = { ...surveyOf({ left: asSent(wholeStick(), narrow) }), survey: 's2' };

function against(details: SurveyDetails = before) {
  const selected = { stick: 'left' as 'left' | 'right' };
  const state = new AgainstState({
    bench: scriptedBench({
      'surveys.open': ({ survey }) =>
        survey === 's2'
          ? { ok: true, value: details }
          : failed('no-survey', 'There is no such survey; choose another.'),
    }),
    stick: () => selected.stick,
    chain: () => chainOf(zone),
    shown: () => surveyOf({ left: asSent(wholeStick(), mapping) }),
  });
  return { state, selected };
}

describe('the survey that is compared with', () => {
  it('stands under its own mapping, as before', async () => {
    const { state } = against();
    expect(state.standing).toBeNull();
    await state.open('s2');
    expect(state.standing?.tone).toBe('before');
    expect(state.standing?.mapping).toEqual(narrow);
    expect(state.standing?.rim?.leastReach?.value).toBeGreaterThan(0.9);
    expect(state.evidence?.rest?.dwells).toHaveLength(24);
  });

  it('says so where it lacks the stick, and where it cannot be opened', async () => {
    const { state, selected } = against();
    await state.open('s2');
    expect(state.problem).toBeNull();
    selected.stick = 'right';
    expect(against().state.problem).toBeNull();
    const other = against({ ...before, sticks: {} });
    await other.state.open('s2');
    expect(other.state.problem?.says).toContain('holds nothing of the left stick');
    await other.state.open('s9');
    expect(other.state.problem?.code).toBe('no-survey');
  });

  it('is put away with nothing of it left', async () => {
    const { state } = against();
    await state.open('s2');
    await state.open(null);
    expect([state.details, state.standing, state.differences]).toEqual([null, null, []]);
  });
});
