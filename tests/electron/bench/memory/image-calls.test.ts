import { readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../../core/image/bundled-maps.ts';
import type { Result } from '../../../../core/result.ts';
import type { Reply, Request } from '../../../../shared/contract.ts';
import { sha256Of } from '../../../../electron/store/sha256.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../../../support/make-image.ts';
import type { MemoryMap } from '../../../../core/image/memory-map.ts';
import { makeBench, valueOf, type TestBench } from '../make-bench.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const PACKED = packed.id;
const user = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
const packedImage = (seed = 1): Uint8Array => makeImage(packed, { factory: bothMappings, user }, seed);
const wordImage = (): Uint8Array => makeImage(words, { factory: bothMappings });

async function take({ bench }: TestBench, bytes: Uint8Array, name = 'dump.bin'): Promise<Result<string>> {
  const request = { upload: name, name, piece: Buffer.from(bytes).toString('base64'), last: true };
  const taken = await bench.handle('images.import', request);
  return taken.ok ? { ok: true, value: taken.value.image?.image ?? '' } : taken;
}

function planOf(
  { bench }: TestBench,
  image: string,
  wish: Request<'images.plan'>['wish'],
): Promise<Result<Reply<'images.plan'>>> {
  return bench.handle('images.plan', { image, map: PACKED, wish });
}

const carry = { carry: { from: 'user', to: 'factory', sticks: ['left', 'right'] } } as const;

describe('the calls around kept images', () => {
  it('takes an image in pieces, keeps it by its digest and gives the same bytes out', async () => {
    const made = await makeBench();
    const { bench } = made;
    const bytes = packedImage();
    const half = bytes.length >> 1;
    const piece = (part: Uint8Array, last: boolean) =>
      bench.handle('images.import', {
        upload: 'one',
        name: 'C:\\dumps\\a.bin',
        piece: Buffer.from(part).toString('base64'),
        last,
      });
    expect(valueOf(await piece(bytes.subarray(0, half), false)).image).toBeNull();
    const image = valueOf(await piece(bytes.subarray(half), true)).image;
    expect(image).toMatchObject({ image: sha256Of(bytes), size: bytes.length });
    expect(image?.kept[0]?.why).toBe('taken in from a.bin');
    const out = valueOf(await bench.handle('images.export', { image: sha256Of(bytes), from: 0 }));
    expect(out.next).toBeNull();
    expect(Buffer.from(out.piece, 'base64').equals(Buffer.from(bytes))).toBe(true);
  });

  it('decodes the layers under the map that fits, and says who reads which', async () => {
    const made = await makeBench();
    const image = valueOf(await take(made, packedImage()));
    const opened = valueOf(await made.bench.handle('images.open', { image, map: null }));
    expect(opened.map.id).toBe(PACKED);
    expect(opened.layers.map(({ layer }) => layer)).toEqual(['factory', 'user']);
    expect(opened.layers[1]?.sticks[0]?.mapping).toEqual(user.left);
    expect(opened.hosts.map(({ layer }) => layer)).toEqual(['user', 'factory']);
  });

  it('plans a carry, applies it to a new image and leaves the old one as it was', async () => {
    const made = await makeBench();
    const image = valueOf(await take(made, packedImage()));
    const plan = valueOf(await planOf(made, image, carry));
    expect(plan.changes.length).toBeGreaterThan(0);
    expect(plan.bytes).toBeGreaterThan(0);
    const after = valueOf(await made.bench.handle('images.apply', { plan: plan.plan }));
    expect(after.image).not.toBe(image);
    const opened = valueOf(await made.bench.handle('images.open', { image: after.image, map: PACKED }));
    expect(opened.layers[0]?.sticks.map(({ mapping }) => mapping)).toEqual([user.left, user.right]);
    const compared = valueOf(
      await made.bench.handle('images.compare', { first: image, second: after.image, map: null }),
    );
    expect(compared.runs.every(({ means }) => means?.startsWith('factory') === true)).toBe(true);
    const back = valueOf(
      await made.bench.handle('images.plan', {
        image: after.image,
        map: PACKED,
        wish: { restore: { image, scope: 'calibration' } },
      }),
    );
    const restored = valueOf(await made.bench.handle('images.apply', { plan: back.plan }));
    expect(restored.image).toBe(image);
  });

  it('reads a patch file back as the same plan, and refuses one that was edited by hand', async () => {
    const made = await makeBench();
    const image = valueOf(await take(made, packedImage()));
    const plan = valueOf(await planOf(made, image, carry));
    expect(valueOf(await made.bench.handle('images.readPatch', { text: plan.patch })).plan).toBe(plan.plan);
    const first = plan.changes[0];
    const edited = plan.patch.replace(`"new": "${first?.new ?? ''}"`, `"new": "${'1'.repeat(first?.new.length ?? 0)}"`);
    const held = valueOf(await made.bench.handle('images.readPatch', { text: edited }));
    expect(await made.bench.handle('images.apply', { plan: held.plan })).toMatchObject({
      ok: false,
      problem: { code: 'patch-edited' },
    });
    const text = await made.bench.handle('images.readPatch', { text: 'not a patch' });
    expect(text).toMatchObject({ ok: false, problem: { code: 'patch-file' } });
  });

  it.each([
    ['an empty file', new Uint8Array(0), 'image-empty'],
    ['a text file', new TextEncoder().encode('min centre max\n'.repeat(40)), 'image-text'],
  ])('takes in no %s', async (_name, bytes, code) => {
    const made = await makeBench();
    expect(await take(made, bytes)).toMatchObject({ ok: false, problem: { code } });
    expect(await readdir(made.folder)).not.toContain('vault');
  });

  it.each([
    ['short', -1, '1 too few'],
    ['long', 1, '1 too many'],
  ])('says how many bytes an image is too %s', async (_name, by, words) => {
    const made = await makeBench();
    const bytes = new Uint8Array(packed.size + by);
    bytes.set(packedImage().subarray(0, bytes.length));
    const image = valueOf(await take(made, bytes));
    const opened = await made.bench.handle('images.open', { image, map: PACKED });
    expect(opened).toMatchObject({ ok: false, problem: { code: 'image-size' } });
    expect(opened.ok ? '' : opened.problem.says).toContain(words);
  });

  it('refuses an image under the map of another pad', async () => {
    const made = await makeBench();
    const image = valueOf(await take(made, wordImage()));
    const plan = await planOf(made, image, carry);
    expect(plan).toMatchObject({ ok: false, problem: { code: 'image-size' } });
  });

  it('says so where a kept image rotted', async () => {
    const made = await makeBench();
    const image = valueOf(await take(made, packedImage()));
    await writeFile(path.join(made.folder, 'vault', image.slice(0, 2), `${image}.bin`), 'rotten');
    const plan = await planOf(made, image, carry);
    expect(plan).toMatchObject({ ok: false, problem: { code: 'vault-rotted' } });
  });

  it('writes the whole of an image back only where both were read from one pad', async () => {
    const made = await makeBench();
    const [one, other] = [valueOf(await take(made, packedImage())), valueOf(await take(made, packedImage(2), 'b.bin'))];
    const plan = await planOf(made, one, { restore: { image: other, scope: 'whole' } });
    expect(plan).toMatchObject({ ok: false, problem: { code: 'restore-other-pad' } });
  });
});

describe('the calls around memory maps', () => {
  it('finds typed values in an image and saves their place as a map that is unproven', async () => {
    const made = await makeBench();
    const bytes = wordImage();
    const image = valueOf(await take(made, bytes));
    const values = bothMappings;
    const found = valueOf(await made.bench.handle('images.find', { image, by: { values } }));
    const reading = found.places[0]?.readings[0];
    const [left, right] = [reading?.sticks.left, reading?.sticks.right];
    expect([left?.offset, right?.offset]).toEqual([0x0100, 0x010c]);
    if (left === undefined || right === undefined) throw new Error('Nothing was found.');
    const place = (hit: typeof left) => ({ offset: hit.offset, codec: hit.codec });
    const layers = { factory: { left: place(left), right: place(right) } };
    const wish = { image, id: 'my-pad', name: 'My pad', layers };
    const unsaid = await made.bench.handle('maps.save', { ...wish, readings: {} });
    expect(unsaid).toMatchObject({ ok: false, problem: { code: 'found-reading' } });
    const saved = await made.bench.handle('maps.save', { ...wish, readings: { factory: 4 } });
    const map = { id: 'my-pad', proof: 'unproven', chosenFrom: 4 };
    expect(valueOf(saved)).toMatchObject({ bundled: false, map });
    const opened = valueOf(await made.bench.handle('images.open', { image, map: 'my-pad' }));
    expect(opened.layers[0]?.sticks[0]?.mapping).toEqual(values.left);
  });

  it('adds a map file, and refuses one whose regions overlap or whose id is taken by the program', async () => {
    const made = await makeBench();
    const text = (changed: object): string => JSON.stringify({ ...packed, id: 'own-map', ...changed });
    expect(valueOf(await made.bench.handle('maps.add', { text: text({}) })).map.id).toBe('own-map');
    const { factory } = packed.layers;
    const twice = { factory: { ...factory, sticks: { left: factory?.sticks.left, right: factory?.sticks.left } } };
    const overlapping = await made.bench.handle('maps.add', { text: text({ layers: twice }) });
    expect(overlapping).toMatchObject({ ok: false, problem: { code: 'memory-map' } });
    expect(overlapping.ok ? '' : overlapping.problem.says).toContain('overlap');
    const taken = await made.bench.handle('maps.add', { text: JSON.stringify(packed) });
    expect(taken).toMatchObject({ ok: false, problem: { code: 'map-bundled' } });
    expect(valueOf(await made.bench.handle('maps.list', {})).maps.map(({ map }) => map.id)).toEqual([
      ...bundledMaps.map(({ id }) => id),
      'own-map',
    ]);
  });
});
