import { expect, it } from 'vitest';
import { done } from '../../../core/result.ts';
import { MemoryImages } from '../../../renderer/memory/memory-images.svelte.ts';
import { MemorySession, type About } from '../../../renderer/memory/memory-session.svelte.ts';
import { restoreImage, whyNotRestored } from '../../../renderer/memory/restore-image.ts';
import { Selection } from '../../../renderer/frame/selection-state.svelte.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const [read, old] = ['ab'.repeat(32), 'cd'.repeat(32)];
const about: About = {
  pad: 'p1',
  protocol: { id: 'demo', name: 'Demo' },
  writing: true,
  mayWrite: true,
  says: null,
  cautions: [],
  image: read,
  journal: null,
  map: null,
  rotted: [],
};

it('one call plans the restore on what was read from the pad and asks for its preview', async () => {
  const map = { id: 'm', name: 'Map', proof: 'proven' } as const;
  const bench = scriptedBench({
    'images.open': ({ image }) => done({ image, size: 1, map, fitting: ['m'], layers: [], hosts: [] }),
    'images.plan': ({ image }) =>
      done({ plan: 'plan-1', image, map: 'm', bytes: 1, changes: [], asks: [], patch: '{}' }),
    'memory.about': () => done(about),
    'memory.latest': () => done({ state: null }),
    'memory.preview': () =>
      done({ token: 't', memory: 'm', expiresInSeconds: 60, changes: [], blocks: [], asks: [], cautions: [] }),
  });
  const [images, memory, selection] = [new MemoryImages(bench), new MemorySession(bench), new Selection()];
  await memory.take('p1');
  expect([read, old].map((image) => whyNotRestored(memory, image) === null)).toEqual([false, true]);
  await restoreImage({ images, memory, selection }, old, 'calibration');
  const planned = bench.asked.find(({ name }) => name === 'images.plan')?.request;
  expect(planned).toMatchObject({ image: read, wish: { restore: { image: old, scope: 'calibration' } } });
  expect(bench.asked.at(-1)).toMatchObject({ name: 'memory.preview', request: { wish: { plan: 'plan-1' } } });
  expect([memory.preview?.token, selection.view, selection.image]).toEqual(['t', 'memory', read]);
});

it('says what stands in the way of a restore', async () => {
  const bench = scriptedBench({
    'memory.about': () => done({ ...about, image: null, writing: false }),
    'memory.latest': () => done({ state: null }),
  });
  const memory = new MemorySession(bench);
  expect(whyNotRestored(memory, old)).toMatch(/pad in hand/u);
  await memory.take('p1');
  expect(whyNotRestored(memory, old)).toMatch(/^Read the memory/u);
  memory.about = { ...about, writing: false };
  expect(whyNotRestored(memory, old)).toMatch(/^Switch writing on/u);
});
