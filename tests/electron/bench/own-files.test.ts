/** Own maps and protocols in the data folder: named with their fault, never replaced by another, never moved or written over. */
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { bundledProtocols } from '../../../core/image/bundled-protocols.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import type { Result } from '../../../core/result.ts';
import { KnownMaps } from '../../../electron/bench/memory/known-maps.ts';
import { KnownProtocols } from '../../../electron/bench/memory/known-protocols.ts';
import { bothMappings, makeImage } from '../../support/make-image.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';
import { valueOf } from './make-bench.ts';

const [packed] = bundledMaps as [MemoryMap];
const [protocol] = bundledProtocols as [MemoryProtocol];
const own: MemoryMap = { ...packed, id: 'own-map', size: 40_000, fingerprint: [{ offset: 0, bytes: 'c0de' }] };
const pad: PadIdentity = { ...protocol.pads[0]!, product: 'Pad', serial: null, transport: 'usb' };
const other = { vendorId: pad.vendorId, productId: pad.productId + 1 };

async function folderOf(files: Readonly<Record<string, unknown>>): Promise<string> {
  const folder = path.join(await temporaryFolder(), 'own');
  await mkdir(folder);
  for (const [name, value] of Object.entries(files))
    await writeFile(path.join(folder, name), typeof value === 'string' ? value : JSON.stringify(value));
  return folder;
}
function told(result: Result<unknown>): string {
  return result.ok ? 'done' : `${result.problem.code}: ${result.problem.says}`;
}

describe('own protocols', () => {
  const find = async (files: Readonly<Record<string, unknown>>): Promise<Result<MemoryProtocol>> =>
    new KnownProtocols(await folderOf(files)).find(pad);

  it('come before the program’s, whatever their file is called', async () => {
    expect(valueOf(await find({ 'x.json': { ...protocol, id: 'own' } })).id).toBe('own');
    expect(valueOf(await find({ 'x.json.off': { ...protocol, id: 'own' } })).id).toBe(protocol.id);
    expect(valueOf(await new KnownProtocols('/nowhere/protocols').find(pad)).id).toBe(protocol.id);
  });

  it.each([
    ['one that does not parse', { 'x.json': { ...protocol, reads: ['radio'] } }, 'Protocol file x.json: '],
    ['one that is no JSON', { 'x.json': '{' }, 'Protocol file x.json: it is not JSON'],
    ['one at fault beside a good one', { 'a.json': protocol, 'x.json': { ...protocol, reads: 1 } }, 'x.json'],
    ['one that does not say for which pads', { 'x.json': { ...protocol, pads: 'all' } }, 'Protocol file x.json: '],
  ])('are not replaced by the program’s where they are at fault: %s', async (_, files, says) => {
    const refused = told(await find(files));
    expect(refused).toContain(says);
    expect(refused).toMatch(/^memory-protocol: /u);
  });

  it('at fault for another pad stand in no pad’s way', async () => {
    expect(valueOf(await find({ 'x.json': { ...protocol, pads: [other], reads: 1 } })).id).toBe(protocol.id);
  });

  it('of which two are for one pad are both refused, and it is said how to choose', async () => {
    const refused = told(await find({ 'a.json': protocol, 'b.json': { ...protocol, id: 'b' } }));
    expect(refused).toMatch(/^memory-protocol-two: .*a\.json and b\.json.*remove all but one, or rename/u);
    expect(told(await find({ 'a.json': protocol, 'b.json': { ...protocol, pads: [other] } }))).toBe('done');
  });
});

describe('own maps', () => {
  const shelfOf = async (files: Readonly<Record<string, unknown>>): Promise<KnownMaps> =>
    new KnownMaps(await folderOf(files));
  const image = Uint8Array.from({ length: own.size }, (_, at) => [0xc0, 0xde][at] ?? 0);

  it('are found by their id, whatever their file is called', async () => {
    const known = await shelfOf({ 'from a friend.json': own });
    expect(valueOf(await known.find('own-map'))).toEqual(own);
    expect(valueOf((await known.read()).onlyFitting(image))?.id).toBe('own-map');
  });

  it('at fault are listed with their fault, stay where they are, and stand for no other', async () => {
    const folder = await folderOf({ 'own.json': { ...own, layers: {} }, 'rot.json': 'rot', 'good.json': own });
    const known = new KnownMaps(folder);
    const { maps, problems } = await known.list();
    expect(maps.filter(({ bundled }) => !bundled).map(({ map }) => map.id)).toEqual(['own-map']);
    expect(problems).toEqual([
      { file: 'own.json', says: expect.stringContaining('Map file own.json: the memory map cannot be used') as string },
      { file: 'rot.json', says: expect.stringContaining('Map file rot.json: it is not JSON') as string },
    ]);
    expect(await readdir(folder)).toEqual(['good.json', 'own.json', 'rot.json']);
    expect(told(await known.find('own-map'))).toContain('map-file: Map file own.json');
    expect(told(await known.find('rot'))).toContain('map-file: Map file rot.json');
    expect(told(await known.find('not-there'))).toContain('map-file: Map file rot.json');
    expect(valueOf(await known.find(packed.id))).toEqual(packed);
    expect(told((await known.read()).onlyFitting(image))).toContain('map-file: ');
  });

  it('at fault do not keep an image of another size from its map', async () => {
    const catalogue = await (await shelfOf({ 'own.json': { ...own, layers: {} } })).read();
    expect(valueOf(catalogue.onlyFitting(makeImage(packed, { factory: bothMappings })))?.id).toBe(packed.id);
  });

  it('of one id are both refused, and so is one with an id of the program’s', async () => {
    const known = await shelfOf({ 'a.json': own, 'b.json': own, 'c.json': packed });
    expect(told(await known.find('own-map'))).toMatch(/^map-two: .*a\.json and b\.json.*remove one/u);
    expect(told(await known.find(packed.id))).toMatch(/^map-two: .*c\.json/u);
    expect((await known.list()).problems.map(({ file }) => file)).toEqual(['a.json', 'b.json', 'c.json']);
    expect(told(await known.save(own))).toContain('map-two');
  });

  it('of which two fit one image are both refused until one is named', async () => {
    const catalogue = await (await shelfOf({ 'a.json': own, 'b.json': { ...own, id: 'other' } })).read();
    expect(told(catalogue.onlyFitting(image))).toMatch(/^map-two: The maps own-map and other .*--map ID/u);
    expect(valueOf(catalogue.find('other')).id).toBe('other');
  });

  it('of a size alone are no rivals of one of the program’s whose fingerprint is there', async () => {
    const found = { ...packed, id: 'found', fingerprint: [] };
    const sound = makeImage(packed, { factory: bothMappings });
    const catalogue = await (await shelfOf({ 'found.json': found })).read();
    expect(valueOf(catalogue.onlyFitting(sound))?.id).toBe(packed.id);
    expect(catalogue.fitting(sound).map(({ id }) => id)).toEqual([packed.id, 'found']);
    const marked = await (await shelfOf({ 'own.json': { ...packed, id: 'marked' } })).read();
    expect(told(marked.onlyFitting(sound))).toContain('map-two: ');
    const two = await (await shelfOf({ 'a.json': { ...own, fingerprint: [] }, 'b.json': { ...own, id: 'b' } })).read();
    expect(told(two.onlyFitting(image))).toContain('map-two: ');
  });

  it('are saved into the file that holds them, and never over another', async () => {
    const folder = await folderOf({ 'mine.json': own, 'new.json': { ...own, id: 'third' }, 'rot.json': 'rot' });
    const known = new KnownMaps(folder);
    valueOf(await known.save({ ...own, name: 'again' }));
    valueOf(await known.save({ ...own, id: 'new', name: 'new' }));
    valueOf(await known.save({ ...own, id: 'rot', name: 'rot' }));
    expect(await readdir(folder)).toEqual(['mine.json', 'new-2.json', 'new.json', 'rot-2.json', 'rot.json']);
    const named = (await known.list()).maps.filter(({ bundled }) => !bundled).map(({ map }) => [map.id, map.name]);
    expect(named).toEqual([
      ['own-map', 'again'],
      ['new', 'new'],
      ['third', own.name],
      ['rot', 'rot'],
    ]);
  });
});
