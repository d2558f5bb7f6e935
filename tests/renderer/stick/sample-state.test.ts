import { expect, test } from 'vitest';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { sampleSentence } from '../../../renderer/workbench/sample-sentence.ts';
import { nearest, SampleState } from '../../../renderer/stick/sample-state.svelte.ts';
import { scriptedBench } from '../support/scripted-bench.ts';
import { standUnder, wholeStick } from '../support/bench-stick.ts';

type Strip = Reply<'surveys.strip'>;
const strip: Strip = { x: [900, 2019, 1000, 2020, 1100, 2021], y: [900, 1999, 1000, 2000, 1100, 2001] };

function stateOf(answer: () => Result<Strip>): SampleState {
  return new SampleState(scriptedBench({ 'surveys.strip': answer }));
}

test('the sample is the reading nearest to the time, with both counts', async () => {
  const state = stateOf(() => done(strip));
  await state.read('s1', 'left', 1040);
  expect(state.now).toEqual({ atUs: 1000, counts: { x: 2020, y: 2000 } });
  await state.read('s1', 'left', null);
  expect(state.now).toBeNull();
  expect(nearest([], 5)).toBeNull();
});

test('without a reading, or with a log that cannot be read, there is none', async () => {
  const empty = stateOf(() => done({ x: [], y: [] }));
  await empty.read('s1', 'left', 1000);
  expect(empty.now).toBeNull();
  const broken = stateOf(() => failed('log-unreadable', 'The log cannot be read.'));
  await broken.read('s1', 'left', 1000);
  expect(broken.now).toBeNull();
});

test('its sentence gives time, counts and the deflection under each mapping', () => {
  const evidence = wholeStick();
  const sentence = sampleSentence({ atUs: 1_234_500, counts: { x: 2020, y: 2000 } }, evidence, [standUnder(evidence)]);
  expect(sentence.replaceAll('\u202f', ' ')).toBe('sample at 1.234 s: x 2020, y 2000 · now 2.0 %');
});
