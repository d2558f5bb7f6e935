/** What a command makes never replaces what it must not, by whatever name it is called. */
import { link, lstat, mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { growingOutput, refuseOverwrite, writeOutput } from '../../electron/shell/command-line/output-files.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const codeOf = (problem: { readonly code: string } | null): string | null => problem?.code ?? null;

describe('the name of an output', () => {
  it('is refused where a file is, unless that is to be replaced', async () => {
    const file = path.join(await temporaryFolder(), 'a.bin');
    expect(refuseOverwrite(file, false)).toBeNull();
    await writeFile(file, 'mine');
    expect(codeOf(refuseOverwrite(file, false))).toBe('file-exists');
    expect(refuseOverwrite(file, true)).toBeNull();
  });

  it('is never that of an input, through links and other names neither', async () => {
    const folder = await temporaryFolder();
    const at = (name: string): string => path.join(folder, name);
    await writeFile(at('image.bin'), 'image');
    await link(at('image.bin'), at('hard.bin'));
    await symlink('image.bin', at('soft.bin'));
    await mkdir(at('inner'));
    const names = ['image.bin', 'hard.bin', 'inner/../image.bin'];
    for (const name of names)
      for (const input of [...names, 'soft.bin'])
        expect([name, input, codeOf(refuseOverwrite(at(name), true, [undefined, at(input)]))]).toEqual([
          name,
          input,
          'output-is-input',
        ]);
    expect(refuseOverwrite(at('image.bin'), true, [at('missing.bin'), '-'])).toBeNull();
  });

  it('is never that of a link, a folder or a device', async () => {
    const folder = await temporaryFolder();
    await symlink('nowhere', path.join(folder, 'dangling'));
    await writeFile(path.join(folder, 'real'), 'real');
    await symlink('real', path.join(folder, 'link'));
    for (const name of ['dangling', 'link'])
      expect(codeOf(refuseOverwrite(path.join(folder, name), true))).toBe('output-link');
    expect(codeOf(refuseOverwrite(folder, true))).toBe('output-no-file');
    if (process.platform !== 'win32') expect(codeOf(refuseOverwrite('/dev/null', true))).toBe('output-no-file');
  });
});

describe('writing an output', () => {
  it('replaces a file where asked and no link that came meanwhile', async () => {
    const file = path.join(await temporaryFolder(), 'a.bin');
    expect((await writeOutput(file, 'first', false)).ok).toBe(true);
    expect(await writeOutput(file, 'second', false)).toMatchObject({ ok: false, problem: { code: 'file-exists' } });
    expect((await writeOutput(file, 'second', true)).ok).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('second');
    const other = `${file}.link`;
    await symlink('a.bin', other);
    expect(await writeOutput(other, 'third', true)).toMatchObject({ ok: false, problem: { code: 'output-link' } });
    expect((await lstat(other)).isSymbolicLink()).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('second');
  });
});

describe('an output that grows', () => {
  it('grows under its own name where that is free', async () => {
    const file = path.join(await temporaryFolder(), 'a.padlog');
    const output = growingOutput(file);
    expect(output.at).toBe(file);
    expect((await output.finish()).ok).toBe(true);
  });

  it('grows beside the file that it replaces, and takes its place at the end', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a.padlog');
    await writeFile(file, 'old');
    await writeFile(path.join(folder, 'a.new.padlog'), 'of another time');
    const output = growingOutput(file);
    expect(output.at).toBe(path.join(folder, 'a.new-2.padlog'));
    await writeFile(output.at, 'new');
    expect(await readFile(file, 'utf8')).toBe('old');
    expect((await output.finish()).ok).toBe(true);
    expect(await readFile(file, 'utf8')).toBe('new');
    expect((await readdir(folder)).sort()).toEqual(['a.new.padlog', 'a.padlog']);
  });
});
