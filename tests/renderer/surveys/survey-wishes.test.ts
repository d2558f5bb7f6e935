import { expect, test } from 'vitest';
import { demoProfile } from '../../../core/pad/demo-profile.ts';
import { profileLayout } from '../../../core/pad/profile-layout.ts';
import { openRows, unseenRows } from '../../../renderer/surveys/inputs/input-rows.ts';
import { areGood, requestOf, usualWishes, wantsNoStick } from '../../../renderer/surveys/survey-wishes.ts';

test('the usual survey takes rest, gate, travel and flicks', () => {
  expect(requestOf(usualWishes)).toEqual({
    steps: ['rest', 'rim', 'travel', 'flick'],
    disturbances: [],
    releases: 24,
    turns: 3,
    sweeps: null,
    flicks: 2,
  });
  expect(areGood(usualWishes)).toBe(true);
  expect(wantsNoStick(usualWishes)).toBe(false);
});

test('disturbances are a step where any is wished for, and only then', () => {
  const wishes = { ...usualWishes, steps: ['rest' as const], disturbances: ['rumble' as const] };
  expect(requestOf(wishes)).toMatchObject({ steps: ['rest', 'disturbance'], disturbances: ['rumble'] });
  expect(requestOf({ ...wishes, disturbances: [] }).steps).toEqual(['rest']);
});

test('a survey of nothing, or of no whole number, cannot be started; one of the inputs needs no stick', () => {
  expect(areGood({ ...usualWishes, steps: [] })).toBe(false);
  for (const sweeps of [0, 11, 1.5, Number.NaN]) expect(areGood({ ...usualWishes, sweeps })).toBe(false);
  expect(areGood({ ...usualWishes, sweeps: 5 })).toBe(true);
  expect(wantsNoStick({ ...usualWishes, steps: ['inputs'] })).toBe(true);
});

test('the checklist names every control before anything was seen', () => {
  const rows = unseenRows(profileLayout(demoProfile));
  expect(rows).toHaveLength(26);
  expect(openRows(rows)).toBe('26 of 26 still missing');
  expect(rows.at(-1)).toMatchObject({ says: 'right trigger', field: { minimum: 0, maximum: 255 }, missing: 'pull all the way' }); // prettier-ignore
  expect(openRows(rows.map((row) => ({ ...row, missing: null })))).toBe('all 26 seen');
});
