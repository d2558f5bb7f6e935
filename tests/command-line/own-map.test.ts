/** A map of the technician's own, in the data folder, for every command around images. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { ensureBuilt } from '../electron/shell/built.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';
import { ONE_LINE, stickwright } from './run-command.ts';

const [packed] = bundledMaps as [MemoryMap];
const own: MemoryMap = { ...packed, id: 'own-map', fingerprint: [{ offset: 0, bytes: 'c0de' }] };
const moved = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
let folder: string;
const file = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-own-map-'));
  process.env['STICKWRIGHT_HOME'] = folder;
  await mkdir(file('maps'));
  await writeFile(file('maps/from a friend.json'), JSON.stringify(own));
  await writeFile(file('pad.bin'), makeImage(own, { factory: bothMappings, user: moved }));
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('a map of one’s own', () => {
  it('is found by its id, or by the image, by every command around images', async () => {
    const shown = await stickwright(['image', 'show', file('pad.bin'), '--json']);
    expect(JSON.parse(shown.stdout)).toMatchObject({ map: 'own-map' });
    const plan = ['image', 'plan', file('pad.bin'), '--map', 'own-map', '--carry', 'user:factory'];
    expect(await stickwright([...plan, '--out', file('p.json')])).toMatchObject({ code: 0 });
    const apply = ['image', 'apply', file('pad.bin'), file('p.json'), '--out', file('new.bin')];
    expect(await stickwright(apply)).toMatchObject({ code: 0 });
    const compared = await stickwright(['image', 'compare', file('pad.bin'), file('new.bin'), '--map', 'own-map']);
    expect(compared.stdout).toContain('factory left x.min 850 → 800');
    const unknown = await stickwright(['image', 'show', file('pad.bin'), '--map', 'nobodys']);
    expect(unknown.stderr).toContain('own-map');
  });

  it('that is at fault is named and stands in the way of a guess, not of a choice', async () => {
    await writeFile(file('maps/rot.json'), '{');
    for (const args of [
      ['image', 'show', file('pad.bin')],
      ['image', 'compare', file('pad.bin'), file('pad.bin')],
      ['image', 'plan', file('pad.bin'), '--carry', 'user:factory', '--out', file('none.json')],
    ]) {
      const ran = await stickwright(args);
      expect(ran).toMatchObject({ code: 1, stdout: '' });
      expect(ran.stderr).toMatch(ONE_LINE);
      expect(ran.stderr).toContain('Map file rot.json: it is not JSON');
    }
    expect(await stickwright(['image', 'show', file('pad.bin'), '--map', 'own-map'])).toMatchObject({ code: 0 });
    await rm(file('maps/rot.json'));
  });

  it('has a second for the same image: both are refused until one is named', async () => {
    await writeFile(file('maps/second.json'), JSON.stringify({ ...own, id: 'second' }));
    const ran = await stickwright(['image', 'show', file('pad.bin')]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(/own-map and second .*--map ID/u);
    expect(await stickwright(['image', 'show', file('pad.bin'), '--map', 'second'])).toMatchObject({ code: 0 });
  });
});
