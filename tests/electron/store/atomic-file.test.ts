import { existsSync } from 'node:fs';
import { chmod, lstat, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { z } from 'zod';
import type { Result } from '../../../core/result.ts';
import { readJson, writeWhole, writeWholeAtOnce } from '../../../electron/store/atomic-file.ts';
import { systemDisk, waitingDisk, type Disk } from '../../../electron/store/disk.ts';
import { failingDisk, fullDisk, lyingDisk, rottenDisk, slowDisk } from '../../support/faulty-disk.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const schema = z.object({ size: z.number() });
const now = new Date('2024-05-06T07:08:09.123Z');

type Write = (file: string, content: string, disk?: Disk) => Promise<Result<void>>;

const ways: readonly [string, Disk, Write][] = [
  ['waiting for nobody', systemDisk, (file, content, disk = systemDisk) => writeWhole(file, content, { disk })],
  ['at once', waitingDisk, (file, content, disk) => Promise.resolve(writeWholeAtOnce(file, content, disk))],
];

describe.each(ways)('writing a file whole, %s', (_, real, write) => {
  it('makes it, and replaces it', async () => {
    const file = path.join(await temporaryFolder(), 'a.json');
    expect(await write(file, 'first')).toEqual({ ok: true, value: undefined });
    expect(await write(file, 'ok')).toEqual({ ok: true, value: undefined });
    expect(await readFile(file, 'utf8')).toBe('ok');
    expect(await readdir(path.dirname(file))).toEqual(['a.json']);
  });

  it('goes on where the disk takes a few bytes at a time', async () => {
    const file = path.join(await temporaryFolder(), 'a.json');
    expect((await write(file, 'a longer content', slowDisk(real, 3))).ok).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('a longer content');
  });

  it.each([
    ['it cannot be made', failingDisk(real, 'create', 'EACCES'), 'file-no-permission'],
    ['the disk refuses', failingDisk(real, 'write', 'ENOSPC'), 'disk-full'],
    ['the disk takes nothing', fullDisk(real, 0), 'disk-full'],
    ['the disk takes a part', fullDisk(real, 3), 'disk-full'],
    ['the disk keeps a part and says nothing', lyingDisk(real, 3), 'disk-full'],
    ['the disk gives back other bytes', rottenDisk(real), 'file-changed'],
    ['it cannot be brought to the disk', failingDisk(real, 'sync', 'EIO'), 'file-failed'],
    ['it cannot be closed', failingDisk(real, 'close', 'EDQUOT'), 'disk-full'],
    ['it cannot be read back', failingDisk(real, 'read', 'EIO'), 'file-failed'],
    ['it cannot take the name', failingDisk(real, 'rename', 'EPERM'), 'file-no-permission'],
  ])('leaves the old file as it was and nothing beside it where %s', async (_why, disk, code) => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.json');
    await writeFile(file, 'old');
    const written = await write(file, 'the new content', disk);
    expect(written.ok ? null : written.problem.code).toBe(code);
    expect(written.ok ? '' : written.problem.says).toMatch(/^a\.json could not be written: [^.]+\.$/u);
    expect(await readFile(file, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['a.json']);
  });

  it('writes through a link and leaves the link', async () => {
    const folder = await temporaryFolder();
    await writeFile(path.join(folder, 'real.json'), 'old');
    await symlink('real.json', path.join(folder, 'a.json'));
    expect((await write(path.join(folder, 'a.json'), 'new')).ok).toBe(true);
    expect(await readFile(path.join(folder, 'real.json'), 'utf8')).toBe('new');
    expect((await lstat(path.join(folder, 'a.json'))).isSymbolicLink()).toBe(true);
  });
});

describe('writing a new file', () => {
  const fresh = { rights: 'shared', replace: false } as const;

  it('makes it, and leaves nothing beside it', async () => {
    const folder = await temporaryFolder();
    expect((await writeWhole(path.join(folder, 'a.json'), Uint8Array.of(0x6f, 0x6b), fresh)).ok).toBe(true);
    expect(await readFile(path.join(folder, 'a.json'), 'utf8')).toBe('ok');
    expect(await readdir(folder)).toEqual(['a.json']);
  });

  it.each([
    ['links', systemDisk],
    ['no links', failingDisk(systemDisk, 'link', 'EPERM')],
  ])('refuses a name that was taken while it was written, on a disk with %s', async (_, disk) => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.json');
    const late: Disk = {
      ...disk,
      async read(from) {
        await writeFile(file, 'somebody was faster');
        return disk.read(from);
      },
    };
    const written = await writeWhole(file, 'new', { ...fresh, disk: late });
    expect(written.ok ? null : written.problem.code).toBe('file-exists');
    expect(await readFile(file, 'utf8')).toBe('somebody was faster');
    expect(await readdir(folder)).toEqual(['a.json']);
  });

  it('does without links where there are none', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.json');
    const disk = failingDisk(systemDisk, 'link', 'ENOTSUP');
    expect((await writeWhole(file, 'new', { ...fresh, disk })).ok).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('new');
    const failing = failingDisk(disk, 'rename', 'EIO');
    expect((await writeWhole(path.join(folder, 'b.json'), 'new', { ...fresh, disk: failing })).ok).toBe(false);
    expect(await readdir(folder)).toEqual(['a.json']);
  });
});

describe('the rights of a file that was written whole', () => {
  const rights = async (file: string): Promise<number> => (await stat(file)).mode & 0o777;

  it.runIf(process.platform !== 'win32')(
    'are the account alone, or what the umask leaves and what it had',
    async () => {
      const folder = await temporaryFolder();
      const umask = process.umask(0o027);
      onTestFinished(() => void process.umask(umask));
      const file = path.join(folder, 'a.json');
      await writeFile(file, 'old', { mode: 0o640 });
      await writeWhole(file, 'new');
      expect(await rights(file)).toBe(0o600);
      await writeWhole(path.join(folder, 'b.json'), 'new', { rights: 'shared' });
      expect(await rights(path.join(folder, 'b.json'))).toBe(0o640);
      await chmod(file, 0o604);
      await writeWhole(file, 'newer', { rights: 'shared' });
      expect(await rights(file)).toBe(0o604);
    },
  );
});

describe('reading a file that is checked', () => {
  it('gives its value, or says that there is none', async () => {
    const file = path.join(await temporaryFolder(), 'a.json');
    expect(await readJson(file, schema, now)).toEqual({ kind: 'missing' });
    await writeFile(file, '{"size":3}');
    expect(await readJson(file, schema, now)).toEqual({ kind: 'read', value: { size: 3 } });
  });

  it('sets one aside that does not parse or does not fit, each under a name of its own', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.json');
    for (const content of ['{"size":', '{"size":"3"}', '']) {
      await writeFile(file, content);
      const read = await readJson(file, schema, now);
      expect(read.kind).toBe('setAside');
      if (read.kind !== 'setAside') return;
      expect(await readFile(read.file, 'utf8')).toBe(content);
      expect(read.problem.says).toContain(path.basename(read.file));
    }
    expect((await readdir(folder)).sort()).toEqual([
      'a.json.2024-05-06-07-08-09-2.set-aside',
      'a.json.2024-05-06-07-08-09-3.set-aside',
      'a.json.2024-05-06-07-08-09.set-aside',
    ]);
  });

  it('says why it cannot be read, and leaves it where it is', async () => {
    const file = path.join(await temporaryFolder(), 'a.json');
    await mkdir(file);
    const read = await readJson(file, schema, now);
    expect(read.kind === 'failed' ? read.problem.code : read.kind).toBe('file-is-folder');
    expect(existsSync(file)).toBe(true);
  });
});
