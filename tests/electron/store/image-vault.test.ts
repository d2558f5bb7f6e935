import { appendFile, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Vault } from '../../../electron/store/image-vault.ts';
import { sha256Of } from '../../../electron/store/sha256.ts';

const image = Uint8Array.of(1, 2, 3, 4);
const now = new Date('2026-11-25T12:00:00Z');

describe('Vault', () => {
  let folder: string;
  let vault: Vault;
  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'stickwright-vault-'));
    vault = new Vault(path.join(folder, 'vault'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  const fileOf = (bytes: Uint8Array): string => {
    const sha = sha256Of(bytes);
    return path.join(folder, 'vault', sha.slice(0, 2), `${sha}.bin`);
  };

  it('keeps an image once, with when and why each time', async () => {
    expect((await vault.keep(image, 'before a patch', 'map-a', now)).ok).toBe(true);
    expect((await vault.keep(image, 'before another', null, now)).ok).toBe(true);
    expect(await vault.read(sha256Of(image))).toEqual({ ok: true, value: Buffer.from(image) });
    const entries = await vault.entries();
    expect(entries.ok && entries.value.map(({ why }) => why)).toEqual(['before a patch', 'before another']);
    expect(await readdir(path.dirname(fileOf(image)))).toHaveLength(1);
  });

  it('refuses a file that rotted, and heals it when the image is kept again', async () => {
    await vault.keep(image, 'first', null, now);
    await writeFile(fileOf(image), Uint8Array.of(1, 2, 3, 5));
    expect(await vault.read(sha256Of(image))).toMatchObject({ ok: false, problem: { code: 'vault-rotted' } });
    await vault.keep(image, 'second', null, now);
    expect((await vault.read(sha256Of(image))).ok).toBe(true);
  });

  it('has no entry before the first, and reads past a line that was cut off', async () => {
    expect(await vault.entries()).toEqual({ ok: true, value: [] });
    await vault.keep(image, 'first', null, now);
    await appendFile(path.join(folder, 'vault', 'kept.jsonl'), '{"sha256":"12');
    const entries = await vault.entries();
    expect(entries.ok && entries.value).toHaveLength(1);
  });

  it('says so where the disk takes nothing', async () => {
    await writeFile(path.join(folder, 'vault'), 'a file in the place of the folder');
    expect(await vault.keep(image, 'first', null, now)).toMatchObject({ ok: false });
  });
});
