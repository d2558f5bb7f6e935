import fs from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { z } from 'zod';
import { readJson, writeWhole } from '../../../electron/store/atomic-file.ts';
import { systemError } from '../../support/failing-files.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const schema = z.object({ size: z.number() });
const now = new Date('2024-05-06T07:08:09.123Z');

/** Makes one operation of the file system fail for as long as the test runs. */
function failing(operation: 'open' | 'write' | 'fsync' | 'rename', errno: string): void {
  const spy = vi.spyOn(fs, operation).mockImplementation((...given: unknown[]) => {
    (given.at(-1) as (thrown: Error) => void)(systemError(errno));
  });
  onTestFinished(() => spy.mockRestore());
}

describe('writing a file whole', () => {
  it('makes it, and replaces it', async () => {
    const file = path.join(await temporaryFolder(), 'a.json');
    expect(await writeWhole(file, 'first')).toEqual({ ok: true, value: undefined });
    expect(await writeWhole(file, Uint8Array.of(0x6f, 0x6b))).toEqual({ ok: true, value: undefined });
    expect(await readFile(file, 'utf8')).toBe('ok');
  });

  it.each([
    ['open', 'EACCES', 'file-no-permission'],
    ['write', 'ENOSPC', 'disk-full'],
    ['fsync', 'EIO', 'file-failed'],
    ['rename', 'EPERM', 'file-no-permission'],
  ] as const)('leaves the old file as it was and nothing beside it when %s fails', async (operation, errno, code) => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.json');
    await writeFile(file, 'old');
    failing(operation, errno);
    const written = await writeWhole(file, 'new');
    expect(written.ok ? null : written.problem.code).toBe(code);
    expect(await readFile(file, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['a.json']);
  });
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
    expect(fs.existsSync(file)).toBe(true);
  });
});
