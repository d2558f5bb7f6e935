import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { ensureBuilt } from '../electron/shell/built.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';
import { fileOf, ONE_LINE, stickwright } from './run-command.ts';

const [packed] = bundledMaps as [MemoryMap];
const moved = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
let folder: string;
const file = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-image-'));
  process.env['STICKWRIGHT_HOME'] = folder;
  await writeFile(file('pad.bin'), makeImage(packed, { factory: bothMappings, user: moved }));
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('stickwright image', () => {
  it('shows the layers and who reads which', async () => {
    const ran = await stickwright(['image', 'show', file('pad.bin'), '--json']);
    const shown = JSON.parse(ran.stdout) as { kind: string; map: string; hosts: { layer: string }[] };
    expect(shown).toMatchObject({ kind: 'stickwright-image', map: packed.id });
    expect(shown.hosts.map(({ layer }) => layer)).toEqual(['user', 'factory']);
    const table = await stickwright(['image', 'show', file('pad.bin')]);
    expect(table.stdout).toMatch(/left stick +x 850 2061 3270, y 840 2038 3235/u);
  });

  it('carries a layer into a new file and leaves the input as it was; compare names what changed', async () => {
    const before = await readFile(file('pad.bin'));
    const out = ['--out', file('carry.json')];
    const plan = await stickwright([
      'image',
      'plan',
      file('pad.bin'),
      '--map',
      packed.id,
      '--carry',
      'user:factory',
      ...out,
    ]);
    expect(plan).toMatchObject({ code: 0 });
    expect(plan.stderr).toMatch(/^This changes the factory layer[^\n]+\(factory\)\n$/u);
    expect(plan.stdout).toMatch(/factory left x\.max 3270 → 3350/u);
    const applied = await stickwright([
      'image',
      'apply',
      file('pad.bin'),
      file('carry.json'),
      '--out',
      file('new.bin'),
    ]);
    expect(applied).toMatchObject({ code: 0 });
    expect(applied.stderr).toMatch(/^This changes the factory layer[^\n]+\(factory\)\n$/u);
    expect(await readFile(file('pad.bin'))).toEqual(before);
    const compared = await stickwright(['image', 'compare', file('pad.bin'), file('new.bin'), '--json']);
    const { sameSize, runs } = JSON.parse(compared.stdout) as { sameSize: boolean; runs: { means: string }[] };
    expect(sameSize).toBe(true);
    expect(runs.map(({ means }) => means).join()).toContain('factory left x.min 850 → 800');
    const again = await stickwright(['image', 'apply', file('new.bin'), file('carry.json'), '--out', file('x.bin')]);
    expect(again).toMatchObject({ code: 1, stdout: '' });
    expect(again.stderr).toMatch(ONE_LINE);
  });

  it('plans a mapping file into a layer and keeps the image in the vault', async () => {
    const mapping = { kind: 'stickwright-mapping', version: 1, sticks: { left: moved.left } };
    const ran = await stickwright([
      'image',
      'plan',
      file('pad.bin'),
      '--layer',
      'factory',
      '--mapping',
      await fileOf('m.json', JSON.stringify(mapping)),
      '--out',
      file('p.json'),
      '--json',
    ]);
    expect(JSON.parse(ran.stdout)).toMatchObject({ kind: 'stickwright-patch', map: packed.id });
    expect(await readFile(path.join(folder, 'vault', 'kept.jsonl'), 'utf8')).toContain('planned from');
  });

  it('finds the calibration by values that are a little off', async () => {
    const near = { left: { ...leftMapping, x: { min: 870, centre: 2049, max: 3250 } }, right: rightMapping };
    const mapping = await fileOf('m.json', JSON.stringify({ kind: 'stickwright-mapping', version: 1, sticks: near }));
    const ran = await stickwright(['image', 'find', file('pad.bin'), '--mapping', mapping, '--json']);
    const { places } = JSON.parse(ran.stdout) as {
      places: { chance: number; readings: { sticks: { left: { offset: number } } }[] }[];
    };
    expect(places[0]?.readings[0]?.sticks.left.offset).toBe(packed.layers.factory?.sticks.left?.offset);
    expect(places[0]?.chance).toBeLessThan(0.01);
  });

  it('tells every reading that fits as well, and what decides between them', async () => {
    const alike = { x: { min: 850, centre: 2050, max: 3250 }, y: { min: 852, centre: 2052, max: 3252 } };
    await writeFile(file('alike.bin'), makeImage(packed, { factory: { left: alike, right: alike } }));
    const sticks = { left: alike, right: alike };
    const mapping = await fileOf('m.json', JSON.stringify({ kind: 'stickwright-mapping', version: 1, sticks }));
    const ran = await stickwright(['image', 'find', file('alike.bin'), '--mapping', mapping]);
    expect(ran.stdout).toMatch(
      /^ {2}left at \d+ \(12-bit pairs: [a-z, ]+(; y first)?\), right at .* by chance 1 in \d{2,}$/mu,
    );
    expect(ran.stdout.match(/^ {2}or left at \d+ .*, right at /gmu)).toHaveLength(15);
    expect(ran.stdout).toMatch(/what decides .*\n.* 16 readings fit these bytes about equally well/u);
  });

  it.each([
    ['an empty file', new Uint8Array(0)],
    ['a text file', new TextEncoder().encode('this is no memory\n')],
    ['one byte short', makeImage(packed, { factory: bothMappings }).subarray(1)],
  ])('refuses %s in one line and writes nothing', async (_, bytes) => {
    await writeFile(file('bad.bin'), bytes);
    const ran = await stickwright([
      'image',
      'plan',
      file('bad.bin'),
      '--carry',
      'user:factory',
      '--out',
      file('none.json'),
    ]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
    await expect(readFile(file('none.json'))).rejects.toThrow();
  });

  it('says how many bytes a cut or padded dump has too few or too many', async () => {
    const whole = makeImage(packed, { factory: bothMappings });
    await writeFile(file('cut.bin'), whole.subarray(0, -3));
    await writeFile(file('padded.bin'), Uint8Array.from([...whole, 255]));
    const cut = await stickwright(['image', 'show', file('cut.bin')]);
    expect(cut).toMatchObject({ code: 1, stdout: '' });
    expect(cut.stderr).toContain('3 too few');
    expect((await stickwright(['image', 'show', file('padded.bin')])).stderr).toContain('1 too many');
  });

  it('refuses two copies that differ where nothing changes by itself', async () => {
    const copy = await readFile(file('pad.bin'));
    copy[0x2c10] = (copy[0x2c10] ?? 0) ^ 1;
    await writeFile(file('copy.bin'), copy);
    const ran = await stickwright([
      'image',
      'plan',
      file('pad.bin'),
      '--copy',
      file('copy.bin'),
      '--carry',
      'user:factory',
      '--out',
      file('none.json'),
    ]);
    expect(ran).toMatchObject({ code: 1 });
    expect(ran.stderr).toContain('byte 11280');
  });
});
