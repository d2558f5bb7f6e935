import { describe, expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { MemoryImages, type ImageDetails, type Plan } from '../../../renderer/memory/memory-images.svelte.ts';
import { toBase64 } from '../../../renderer/kit/page/file-pieces.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const A = 'a'.repeat(64);
const B = 'b'.repeat(64);
const kept = { image: A, size: 4096, kept: [{ at: '2026-01-02T03:04:05Z', why: 'read', map: null, pad: null }] };
const details: ImageDetails = {
  image: A,
  size: 4096,
  map: { id: 'm', name: 'map', proof: 'proven' },
  fitting: ['m'],
  layers: [],
  hosts: [],
};
const plan: Plan = {
  plan: 'p1',
  image: A,
  map: 'm',
  bytes: 2,
  changes: [{ offset: 1, old: '00', new: '01', means: 'factory left x.max 1 → 2' }],
  asks: [],
  patch: '{}',
};
const carry = { carry: { from: 'user', to: 'factory', sticks: ['left'] } } as const;

async function opened(answers: Parameters<typeof scriptedBench>[0] = {}) {
  const bench = scriptedBench({ 'images.open': () => done(details), 'images.plan': () => done(plan), ...answers });
  const images = new MemoryImages(bench);
  await images.open(A, null);
  return { bench, images };
}

describe('memory images', () => {
  test('are listed and followed, with the maps', async () => {
    const bench = scriptedBench({
      'images.list': () => done([kept]),
      'maps.list': () => done({ maps: [], problems: [] }),
    });
    const images = new MemoryImages(bench);
    const end = await images.follow();
    expect(images.list).toEqual([kept]);
    bench.tell('images.changed', []);
    expect(images.list).toEqual([]);
    end();
    bench.tell('images.changed', [kept]);
    expect(images.list).toEqual([]);
  });

  test('an image that cannot be opened leaves nothing of the one before on the screen', async () => {
    const { bench, images } = await opened();
    expect(images.details?.image).toBe(A);
    bench.answers['images.open'] = () => failed('vault-rotted', 'It rotted.');
    await images.open(B, null);
    expect(images.details).toBeNull();
    expect(images.problem?.code).toBe('vault-rotted');
  });

  test('a plan goes when another image is opened', async () => {
    const { images } = await opened();
    await images.planFor(carry);
    expect(images.plan?.bytes).toBe(2);
    await images.open(B, null);
    expect(images.plan).toBeNull();
  });

  test('a refused plan is told, and nothing is left of the one before', async () => {
    const { bench, images } = await opened();
    await images.planFor(carry);
    bench.answers['images.plan'] = () => failed('patch-nothing', 'Nothing to write.');
    await images.planFor(carry);
    expect(images.plan).toBeNull();
    expect(images.planProblem?.code).toBe('patch-nothing');
  });

  test('a patch file of another image is refused by name', async () => {
    const { images } = await opened({ 'images.readPatch': () => done({ ...plan, image: B }) });
    await images.readPatch('{}');
    expect(images.plan).toBeNull();
    expect(images.planProblem?.code).toBe('patch-image');
  });

  test('a file is handed over in pieces and comes back whole', async () => {
    const bytes = Uint8Array.from({ length: 600_000 }, (_, i) => i % 251);
    const half = 300_000;
    const { bench, images } = await opened({
      'images.import': ({ last }) => done({ image: last ? kept : null }),
      'images.export': ({ from }) =>
        done({ piece: toBase64(bytes.subarray(from, from + half)), next: from === 0 ? half : null }),
    });
    expect(await images.import(new File([bytes], 'dump.bin'))).toEqual(kept);
    expect(bench.asked.filter(({ name }) => name === 'images.import')).toHaveLength(2);
    expect(images.importing).toBeNull();
    const blob = await images.export(A);
    expect(new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))).toEqual(bytes);
  });

  test('a refused file ends the handing over', async () => {
    const { bench, images } = await opened({ 'images.import': () => failed('image-empty', 'The image is empty.') });
    expect(await images.import(new File([new Uint8Array(2_000_000)], 'dump.bin'))).toBeNull();
    expect(bench.asked.filter(({ name }) => name === 'images.import')).toHaveLength(1);
    expect(images.problem?.code).toBe('image-empty');
  });
});
