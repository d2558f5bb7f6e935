import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeWholeAtOnce } from '../../../electron/store/atomic-file.ts';
import { waitingDisk } from '../../../electron/store/disk.ts';
import { defaultSettings, KeptSettings } from '../../../electron/store/settings.ts';
import { settingsSchema } from '../../../shared/schemas.ts';
import { fullDisk } from '../../support/faulty-disk.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const now = (): Date => new Date('2024-05-06T07:08:09Z');

function settingsIn(folder: string): KeptSettings {
  return new KeptSettings(folder, now);
}

describe('the settings', () => {
  it('are the defaults, which fit their schema, until something is written', async () => {
    const settings = settingsIn(path.join(await temporaryFolder(), 'new'));
    expect(settings.read()).toEqual(defaultSettings);
    expect(settingsSchema.parse(defaultSettings)).toEqual(defaultSettings);
    expect(settings.problem).toBeNull();
  });

  it('are kept for the next program, in one file that a person can read', async () => {
    const folder = path.join(await temporaryFolder(), 'new');
    expect(settingsIn(folder).write({ theme: 'dark', confirmButton: 4 }).ok).toBe(true);
    const content = JSON.parse(await readFile(path.join(folder, 'settings.json'), 'utf8')) as unknown;
    expect(content).toMatchObject({ theme: 'dark', confirmButton: 4 });
    expect(settingsIn(folder).read()).toEqual({ ...defaultSettings, theme: 'dark', confirmButton: 4 });
  });

  it('are seen by one shell as another wrote them', async () => {
    const folder = await temporaryFolder();
    const [one, other] = [settingsIn(folder), settingsIn(folder)];
    one.write({ sound: false });
    expect(other.read().sound).toBe(false);
    other.write({ speech: true });
    expect(one.read()).toMatchObject({ sound: false, speech: true });
  });

  it('keep what a newer version wrote, and take what is missing by default', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'settings.json');
    await writeFile(file, '{"theme":"light","tomorrow":[1,2]}');
    const settings = settingsIn(folder);
    expect(settings.read()).toEqual({ ...defaultSettings, theme: 'light' });
    settings.write({ sound: false });
    expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ theme: 'light', sound: false, tomorrow: [1, 2] });
  });

  it('take the one zone of an earlier version as a chain of one stage, once; a chain beside it stands', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'settings.json');
    const zone = { shape: 'radial', inner: 0.12, outer: 0.9 };
    await writeFile(file, JSON.stringify({ theme: 'light', zone, chain: null }));
    const settings = settingsIn(folder);
    expect(settings.read().chain).toMatchObject({
      name: 'radial 12 %, cut',
      stages: [{ zone: 'radial', inner: 0.12 }],
    });
    settings.write({ sound: false });
    const written = JSON.parse(await readFile(file, 'utf8')) as object;
    expect(written).toMatchObject({ chain: { stages: [{ zone: 'radial', inner: 0.12 }] } });
    expect(written).not.toHaveProperty('zone');
    const chain = { ...settings.read().chain, name: 'mine', stages: [{ minimumOutput: 0.1 }] };
    await writeFile(file, JSON.stringify({ zone, chain }));
    expect(settings.read().chain).toEqual(chain);
    for (const wrong of [{ shape: 'oval' }, { shape: 'scaledRadial', inner: 0.9, outer: 0.1 }]) {
      await writeFile(file, JSON.stringify({ zone: wrong, chain: null }));
      expect([settings.read().chain, settings.problem]).toEqual([defaultSettings.chain, null]);
    }
  });

  it.each(['{"theme":', '["dark"]', '"dark"', '{"theme":"purple"}', ''])(
    'set the file %s aside, tell it, and go on with the defaults',
    async (content) => {
      const folder = await temporaryFolder();
      await writeFile(path.join(folder, 'settings.json'), content);
      const settings = settingsIn(folder);
      expect(settings.read()).toEqual(defaultSettings);
      expect(settings.problem?.code).toBe('file-set-aside');
      const aside = 'settings.json.2024-05-06-07-08-09.set-aside';
      expect(await readFile(path.join(folder, aside), 'utf8')).toBe(content);
      expect(settings.write({ sound: false }).ok).toBe(true);
      expect((await readdir(folder)).sort()).toEqual(['settings.json', aside]);
    },
  );

  it('set a file aside that is damaged while the program runs, and keep what held before', async () => {
    const folder = await temporaryFolder();
    const settings = settingsIn(folder);
    settings.write({ theme: 'dark' });
    await writeFile(path.join(folder, 'settings.json'), '{');
    expect(settings.read().theme).toBe('dark');
    expect(settings.write({ sound: false })).toEqual({
      ok: true,
      value: { ...defaultSettings, theme: 'dark', sound: false },
    });
    expect(await readdir(folder)).toHaveLength(2);
  });

  it('refuse what is not possible and stay as they were', async () => {
    const settings = settingsIn(await temporaryFolder());
    const written = settings.write({ confirmButton: 500 });
    expect(written.ok ? null : written.problem.code).toBe('settings-invalid');
    expect(settings.read()).toEqual(defaultSettings);
  });

  it('hold as long as the program where they cannot be written, and say why', async () => {
    const folder = await temporaryFolder();
    const settings = new KeptSettings(folder, now, (file, content) =>
      writeWholeAtOnce(file, content, fullDisk(waitingDisk, 10)),
    );
    const written = settings.write({ theme: 'dark' });
    expect(written.ok ? null : written.problem.code).toBe('disk-full');
    expect(settings.problem?.code).toBe('disk-full');
    expect(settings.read().theme).toBe('dark');
    expect(await readdir(folder)).toEqual([]);
  });

  it('stay in their file as they were where the disk is full', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'settings.json');
    settingsIn(folder).write({ theme: 'light' });
    const before = await readFile(file, 'utf8');
    const settings = new KeptSettings(folder, now, (to, content) =>
      writeWholeAtOnce(to, content, fullDisk(waitingDisk, before.length - 2)),
    );
    expect(settings.write({ theme: 'dark' })).toMatchObject({ ok: false, problem: { code: 'disk-full' } });
    expect(await readFile(file, 'utf8')).toBe(before);
    expect(await readdir(folder)).toEqual(['settings.json']);
  });

  it('say when the file cannot be read', async () => {
    const folder = await temporaryFolder();
    await mkdir(path.join(folder, 'settings.json'));
    const settings = settingsIn(folder);
    expect(settings.read()).toEqual(defaultSettings);
    expect(settings.problem?.code).toBe('file-is-folder');
  });
});
