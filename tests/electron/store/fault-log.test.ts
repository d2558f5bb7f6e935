import { readFile, stat, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { openFaultLog, withoutNames } from '../../../electron/store/fault-log.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

describe('the log of faults', () => {
  it('holds when, where and what, for this account alone', async () => {
    const folder = path.join(await temporaryFolder(), 'data');
    const log = openFaultLog(folder, () => new Date('2024-05-01T10:00:00Z'));
    log.note('a part', new Error('this broke'));
    log.note('another', 'a word');
    const text = await readFile(path.join(folder, 'faults.log'), 'utf8');
    expect(text).toMatch(/^2024-05-01T10:00:00\.000Z a part: Error: this broke\n {4}at /u);
    expect(text).toContain('2024-05-01T10:00:00.000Z another: a word\n');
    expect((await stat(path.join(folder, 'faults.log'))).mode & 0o777).toBe(0o600);
  });

  it('names no home folder and no account', async () => {
    const folder = await temporaryFolder();
    openFaultLog(folder).note('x', new Error(path.join(homedir(), 'work', 'a.ts')));
    expect(await readFile(path.join(folder, 'faults.log'), 'utf8')).toContain('Error: ~/work/a.ts');
    expect(withoutNames('at /home/anna/x and /media/anna/disk, /media/annabel/disk', '/home/anna', 'anna')).toBe(
      'at ~/x and /media/user/disk, /media/annabel/disk',
    );
    expect(withoutNames('C:\\Data\\anna\\x', 'C:\\Users\\anna', 'anna')).toBe('C:\\Data\\user\\x');
  });

  it('stays small, and keeps the file before it', async () => {
    const folder = await temporaryFolder();
    const log = openFaultLog(folder);
    await writeFile(path.join(folder, 'faults.log'), 'x'.repeat(131_072));
    log.note('a part', 'y'.repeat(1_000_000));
    expect((await stat(path.join(folder, 'faults.log'))).size).toBeLessThan(9_000);
    expect((await stat(path.join(folder, 'faults.old.log'))).size).toBe(131_072);
  });

  it('says where it cannot be written, and never throws', async () => {
    const file = path.join(await temporaryFolder(), 'file');
    await writeFile(file, '');
    const said = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    openFaultLog(file).note('x', 'y');
    expect(said.mock.calls).toEqual([[expect.stringMatching(/^The error could not be noted in faults\.log: /u)]]);
    said.mockRestore();
  });
});
