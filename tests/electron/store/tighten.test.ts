import { chmod, mkdir, readdir, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { appendLine } from '../../../electron/store/append-line.ts';
import { systemFiles } from '../../../electron/store/log-files.ts';
import { makeFolder, makeFolderAtOnce } from '../../../electron/store/own-folder.ts';
import { findPlaces } from '../../../electron/store/places.ts';
import { tighten } from '../../../electron/store/tighten.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const rights = async (file: string): Promise<string> => ((await stat(file)).mode & 0o777).toString(8);

const placesIn = (home: string) => findPlaces({ platform: 'linux', env: { STICKWRIGHT_HOME: home }, home: '/nowhere' });

describe.skipIf(process.platform === 'win32')('the rights of what the program keeps', () => {
  beforeEach(() => {
    const umask = process.umask(0);
    onTestFinished(() => void process.umask(umask));
  });

  it('are the account alone whatever the umask, for folders and what leads to them', async () => {
    const top = await temporaryFolder();
    await makeFolder(path.join(top, 'a', 'b', 'c'));
    makeFolderAtOnce(path.join(top, 'd', 'e'));
    for (const folder of ['a', 'a/b', 'a/b/c', 'd', 'd/e']) expect(await rights(path.join(top, folder))).toBe('700');
    await chmod(path.join(top, 'a'), 0o755);
    await makeFolder(path.join(top, 'a'));
    expect(await rights(path.join(top, 'a'))).toBe('755');
    const log = await systemFiles.create(path.join(top, 'a.padlog'));
    await log.close();
    await appendLine(path.join(top, 'a.jsonl'), {});
    for (const file of ['a.padlog', 'a.jsonl']) expect(await rights(path.join(top, file))).toBe('600');
  });

  it('are taken from others where an older version left them wider', async () => {
    const home = await temporaryFolder();
    await mkdir(path.join(home, 'surveys', 'one'), { recursive: true, mode: 0o755 });
    await mkdir(path.join(home, 'settings'), { mode: 0o755 });
    const files = ['surveys/one/survey.padlog', 'settings/settings.json', 'writable-pads.json'];
    for (const file of files) await writeFile(path.join(home, file), '', { mode: 0o644 });
    await chmod(home, 0o755);
    expect(await tighten(placesIn(home))).toBeNull();
    for (const file of files) expect(await rights(path.join(home, file))).toBe('600');
    for (const folder of ['', 'surveys', 'surveys/one', 'settings'])
      expect(await rights(path.join(home, folder))).toBe('700');
  });

  it('stay as they are for what is not of the program, and behind links', async () => {
    const [home, other] = [await temporaryFolder(), await temporaryFolder()];
    await writeFile(path.join(other, 'mine'), '', { mode: 0o644 });
    await writeFile(path.join(home, 'letters.txt'), '', { mode: 0o644 });
    await chmod(home, 0o755);
    await mkdir(path.join(home, 'maps'), { mode: 0o755 });
    await symlink(path.join(other, 'mine'), path.join(home, 'maps', 'link.json'));
    await symlink(other, path.join(home, 'vault'));
    await chmod(other, 0o755);
    expect(await tighten(placesIn(home))).toBeNull();
    expect(await rights(path.join(home, 'maps'))).toBe('700');
    for (const [file, is] of [
      [path.join(other, 'mine'), '644'],
      [other, '755'],
      [home, '755'],
      [path.join(home, 'letters.txt'), '644'],
    ] as const)
      expect([file, await rights(file)]).toEqual([file, is]);
  });

  it('let go what a killed program left unfinished for a day', async () => {
    const home = await temporaryFolder();
    const [old, fresh] = ['.0123456789abcdef.part', '.fedcba9876543210.part'];
    for (const name of [old, fresh]) await writeFile(path.join(home, name), '');
    const before = new Date(Date.now() - 90_000_000);
    await utimes(path.join(home, old), before, before);
    expect(await tighten(placesIn(home))).toBeNull();
    expect(await readdir(home)).toEqual([fresh]);
  });

  it('are no worry where nothing is kept yet', async () => {
    expect(await tighten(placesIn(path.join(await temporaryFolder(), 'none')))).toBeNull();
  });
});
