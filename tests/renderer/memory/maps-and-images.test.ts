// @vitest-environment happy-dom
/** The panels of maps and images over a bench that answers as it does: a faulty map file, two maps that fit, an image saved. */
import { flushSync } from 'svelte';
import { expect, it, onTestFinished, vi } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { done } from '../../../core/result.ts';
import { MapCatalogue } from '../../../electron/bench/memory/map-catalogue.ts';
import { MemoryImages, provideImages, type ImageDetails } from '../../../renderer/memory/memory-images.svelte.ts';
import { provideMemory, type MemorySession } from '../../../renderer/memory/memory-session.svelte.ts';
import { providePads, type PadsState } from '../../../renderer/pads/pads-state.svelte.ts';
import { selection } from '../../../renderer/frame/selection-state.svelte.ts';
import { toBase64 } from '../../../renderer/kit/page/file-pieces.ts';
import ImagePanel from '../../../renderer/memory/ImagePanel.svelte';
import MapsPanel from '../../../renderer/memory/MapsPanel.svelte';
import SaveImage from '../../../renderer/memory/SaveImage.svelte';
import { scriptedBench } from '../support/scripted-bench.ts';
import { showPart, sole } from '../support/show-part.ts';

const [packed] = bundledMaps as [MemoryMap];
const twin: MemoryMap = { ...packed, id: 'own-twin', name: 'A second map of this memory' };
const image = 'ab12'.repeat(16);
const fault = { file: 'mine.json', says: 'Map file mine.json: size must be a whole number.' };

const details = (map: MemoryMap): ImageDetails => ({
  image,
  size: packed.size,
  map: { id: map.id, name: map.name, proof: map.proof },
  fitting: [packed.id, twin.id],
  layers: [],
  hosts: [],
});

/** As the bench has it: with two maps that fit and none named it opens nothing. */
async function twoThatFit() {
  const maps = [packed, twin];
  const listed = { maps: [packed, twin].map((map) => ({ map, bundled: map === packed })), problems: [fault] };
  const unclear = new MapCatalogue(
    maps.map((map) => ({ map, file: null })),
    [],
  ).onlyFitting(fitting());
  if (unclear.ok) throw new Error('Both were to fit.');
  const bench = scriptedBench({
    'images.list': () =>
      done([{ image, size: packed.size, kept: [{ at: '2024-05-01T10:00:00Z', why: 'a file', map: null, pad: null }] }]),
    'maps.list': () => done(listed),
    'images.open': ({ map }) => {
      const found = maps.find(({ id }) => id === map);
      return found === undefined ? unclear : done(details(found));
    },
    'images.export': ({ from }) =>
      done({ piece: toBase64(Uint8Array.of(from, from + 1)), next: from === 0 ? 2 : null }),
  });
  const images = new MemoryImages(bench);
  onTestFinished(await images.follow());
  return { bench, images };
}

function fitting(): Uint8Array {
  const bytes = new Uint8Array(packed.size);
  for (const { offset, bytes: hex } of packed.fingerprint) bytes.set(Buffer.from(hex, 'hex'), offset);
  return bytes;
}

it('lists an own map file that is not used, with its fault, beside the maps that are', async () => {
  const { images, bench } = await twoThatFit();
  const page = showPart(MapsPanel, () => provideImages(images), {});
  const faulty = sole(page, 'ul', /^Map files that are not used$/u);
  expect([...faulty.querySelectorAll('li')].map((item) => item.textContent.replaceAll(/\s+/gu, ' ').trim())).toEqual([
    `mine.json not used ${fault.says}`,
  ]);
  expect(sole(page, 'b', /^own-twin$/u).closest('ul')).not.toBe(faulty);
  bench.tell('maps.changed', { maps: [], problems: [] });
  flushSync();
  expect(page.textContent).not.toContain('mine.json');
});

it('asks for the map where two fit, opens the image under the chosen one, and lets it be read with the other', async () => {
  const { images } = await twoThatFit();
  selection.image = image;
  onTestFinished(() => void (selection.image = null));
  await images.open(image, null);
  const provide = (): void => {
    provideImages(images);
    provideMemory({ about: null, running: false } as unknown as MemorySession);
    providePads({ simulated: true } as unknown as PadsState);
  };
  const page = showPart(ImagePanel, provide, {});
  const chooser = (): HTMLSelectElement | null =>
    sole(page, 'label', /^\s*Map/u).querySelector<HTMLSelectElement>('select');
  const offered = (): (string | undefined)[] => [...(chooser()?.options ?? [])].map(({ value }) => value);
  const choose = async (id: string): Promise<void> => {
    const select = chooser();
    if (select !== null) select.value = id;
    select?.dispatchEvent(new Event('change', { bubbles: true }));
    await vi.waitFor(() => expect(images.details?.map.id).toBe(id));
    flushSync();
  };
  expect(page.textContent).toContain(images.problem?.says);
  expect(images.problem?.code).toMatch(/^map-/u);
  expect([chooser()?.value, offered()]).toEqual(['', ['', packed.id, twin.id]]);
  await choose(twin.id);
  expect([chooser()?.value, offered()]).toEqual([twin.id, [packed.id, twin.id]]);
  expect(page.textContent).toContain(twin.name);
  expect(images.problem).toBeNull();
  await choose(packed.id);
  expect(page.textContent).not.toContain(twin.name);
});

it('hands the whole image over as a file that bears its number', async () => {
  const { images } = await twoThatFit();
  const saved: { name: string; blob: Blob }[] = [];
  const blobs = new Map<string, Blob>();
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    blobs.set('blob:1', blob as Blob);
    return 'blob:1';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    const blob = blobs.get(this.href);
    if (blob !== undefined) saved.push({ name: this.download, blob });
  });
  onTestFinished(() => void vi.restoreAllMocks());
  const page = showPart(SaveImage, () => provideImages(images), { image });
  sole(page, 'button', /^Save this image/u).click();
  await vi.waitFor(() => expect(saved).toHaveLength(1));
  expect(saved[0]?.name).toBe('ab12ab12ab12.bin');
  expect([...new Uint8Array((await saved[0]?.blob.arrayBuffer()) ?? [])]).toEqual([0, 1, 2, 3]);
});
