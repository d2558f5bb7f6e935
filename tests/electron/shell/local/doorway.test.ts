import { chmod, mkdir, readFile, stat, utimes, writeFile } from 'node:fs/promises';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makeDoor } from '../../../../electron/shell/local/doorway.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';

const ADDRESS = 'http://127.0.0.1:40001/#ticket=abc_DEF-123';

describe('the doorway of the local shell', () => {
  it('is a file of this account alone in a folder of this account alone, and leads to the address', async () => {
    const folder = path.join(await temporaryFolder(), 'doorway');
    await mkdir(folder);
    await chmod(folder, 0o755);
    const door = makeDoor(folder, () => ADDRESS);
    expect(door).not.toContain('abc_DEF-123');
    const file = fileURLToPath(door);
    expect((await stat(folder)).mode & 0o777).toBe(0o700);
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    const page = await readFile(file, 'utf8');
    expect(page).toContain(`<meta http-equiv="refresh" content="0; url=${ADDRESS}">`);
    expect(page).toContain(`<a href="${ADDRESS}">`);
  });

  it('is gone when its ticket is, and leaves other doors', async () => {
    const folder = await temporaryFolder();
    const gone: (() => void)[] = [];
    for (let count = 0; count < 2; count += 1) makeDoor(folder, (hear) => (gone.push(hear), ADDRESS));
    expect(readdirSync(folder)).toHaveLength(2);
    gone[0]?.();
    expect(readdirSync(folder)).toHaveLength(1);
  });

  it('sweeps away what an earlier program left, and nothing else', async () => {
    const folder = await temporaryFolder();
    const names = ['old', 'future', 'own'].map((_, index) => `enter-${String(index).repeat(32)}.html`);
    await Promise.all([...names, 'other.html'].map((name) => writeFile(path.join(folder, name), '')));
    const old = new Date(Date.now() - 3_600_000);
    const future = new Date(Date.now() + 3_600_000);
    await utimes(path.join(folder, names[0]!), old, old);
    await utimes(path.join(folder, 'other.html'), old, old);
    await utimes(path.join(folder, names[1]!), future, future);
    const door = path.basename(fileURLToPath(makeDoor(folder, () => ADDRESS)));
    expect(readdirSync(folder).toSorted()).toEqual([names[2], 'other.html', door].toSorted());
  });
});
