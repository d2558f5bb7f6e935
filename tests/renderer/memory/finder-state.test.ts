/** Whose places the finder shows: of the image and the survey that are chosen, and of no other. */
import { expect, test } from 'vitest';
import { done, type Result } from '../../../core/result.ts';
import { FinderState, type Places } from '../../../renderer/memory/finder-state.svelte.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const A = 'a'.repeat(64);
const B = 'b'.repeat(64);
const left = { x: { min: 850, centre: 2061, max: 3270 }, y: { min: 840, centre: 2038, max: 3235 } };
const found: Places = { places: [] } as unknown as Places;

function looking(): FinderState {
  return new FinderState(scriptedBench({ 'images.find': (): Result<Places> => done(found) }));
}

test('places stand while image and survey are those that they were found by', async () => {
  const finder = looking();
  await finder.findBySurvey(A, 's1');
  finder.keepOnlyOf(A, 's1');
  expect(finder.places).toEqual(found);
  finder.keepOnlyOf(A, 's2');
  expect(finder.places).toBeNull();
  await finder.findBySurvey(A, 's1');
  finder.keepOnlyOf(B, 's1');
  expect(finder.places).toBeNull();
});

test('what was typed is of no survey', async () => {
  const finder = looking();
  await finder.findByValues(A, { left });
  finder.keepOnlyOf(A, 's2');
  expect(finder.places).toEqual(found);
  finder.keepOnlyOf(null, 's2');
  expect(finder.places).toBeNull();
});

test('places of an image that was left while they were looked for are not shown of the next', async () => {
  const finder = looking();
  const search = finder.findBySurvey(A, 's1');
  finder.keepOnlyOf(B, 's1');
  expect(finder.looking).toBe(false);
  await search;
  expect(finder.places).toBeNull();
});
