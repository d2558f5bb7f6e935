import { existsSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { appendLine } from '../../../electron/store/append-line.ts';
import { Vault } from '../../../electron/store/image-vault.ts';
import { faultDisk } from '../../support/fault-disk.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

vi.mock('node:fs/promises', async (original) => {
  const { faultDisk: disk } = await import('../../support/fault-disk.ts');
  return disk.over(await original());
});

const lines = async (file: string): Promise<string> => readFile(file, 'utf8');

afterEach(() => faultDisk.arm(null));

describe('a line at the end of a file', () => {
  it('comes after the others, in a file of the account alone', async () => {
    const file = path.join(await temporaryFolder(), 'a.jsonl');
    await appendLine(file, { a: 1 }, true);
    await appendLine(file, { a: 2 });
    expect(await lines(file)).toBe('{"a":1}\n{"a":2}\n');
    if (process.platform !== 'win32') expect((await stat(file)).mode & 0o777).toBe(0o600);
    await expect(appendLine(file, { a: 3 }, true)).rejects.toMatchObject({ code: 'EEXIST' });
    expect(await lines(file)).toBe('{"a":1}\n{"a":2}\n');
  });

  it('is cut off again where the disk takes a part of it', async () => {
    const file = path.join(await temporaryFolder(), 'a.jsonl');
    await appendLine(file, { a: 1 });
    faultDisk.arm({ kind: 'full', line: 0 });
    await expect(appendLine(file, { a: 'much longer' })).rejects.toMatchObject({ code: 'ENOSPC' });
    expect(await lines(file)).toBe('{"a":1}\n');
    await appendLine(file, { a: 2 });
    expect(await lines(file)).toBe('{"a":1}\n{"a":2}\n');
  });

  it('leaves no file that was made for it', async () => {
    const file = path.join(await temporaryFolder(), 'a.jsonl');
    faultDisk.arm({ kind: 'full', line: 0 });
    await expect(appendLine(file, { a: 1 }, true)).rejects.toMatchObject({ code: 'ENOSPC' });
    expect(existsSync(file)).toBe(false);
  });

  it.each(['', 'x', 'x'.repeat(10_000)])('begins where the last whole line ends (%#)', async (half) => {
    const file = path.join(await temporaryFolder(), 'a.jsonl');
    await writeFile(file, `{"a":1}\n${half}`);
    await appendLine(file, { a: 2 });
    expect(await lines(file)).toBe('{"a":1}\n{"a":2}\n');
    await writeFile(file, half);
    await appendLine(file, { a: 3 });
    expect(await lines(file)).toBe('{"a":3}\n');
  });
});

describe('the index of kept images', () => {
  it('loses no entry to one that the disk had no room for', async () => {
    const folder = await temporaryFolder();
    const vault = new Vault(folder);
    const keep = (byte: number) => vault.keep(Uint8Array.of(byte), 'test', null, new Date(0));
    expect((await keep(1)).ok).toBe(true);
    faultDisk.arm({ kind: 'full', line: 0 });
    expect(await keep(2)).toMatchObject({ ok: false, problem: { code: 'disk-full' } });
    faultDisk.arm(null);
    expect((await keep(3)).ok).toBe(true);
    const entries = await vault.entries();
    expect(entries.ok ? entries.value.length : 0).toBe(2);
  });
});
