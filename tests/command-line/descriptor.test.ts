import { readFileSync, readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, projectFile } from '../electron/shell/built.ts';
import { fileOf, ONE_LINE, stickwright } from './run-command.ts';

beforeAll(ensureBuilt, 120_000);

const folder = projectFile('tests/golden/descriptors');

describe('stickwright descriptor', () => {
  const hex = (JSON.parse(readFileSync(`${folder}/pad-a.json`, 'utf8')) as { descriptorHex: string }).descriptorHex;
  const spaced = (hex.match(/../gu) ?? []).join(' ');

  it('tells hex text and bytes apart and prints the same for both', async () => {
    const asText = await stickwright(['descriptor', await fileOf('d.txt', `${spaced}\n`), '--json']);
    const asBytes = await stickwright(['descriptor', await fileOf('d.bin', Buffer.from(hex, 'hex')), '--json']);
    const fromInput = await stickwright(['--json', 'descriptor', '-'], hex);
    expect(asText.code).toBe(0);
    expect(asBytes.stdout).toBe(asText.stdout);
    expect(fromInput.stdout).toBe(asText.stdout);
    expect(asText.stdout.startsWith('{"kind":"stickwright-descriptor","version":1,')).toBe(true);
  });

  it('prints a table for a person', async () => {
    const ran = await stickwright(['descriptor', '-'], hex);
    expect(ran.stdout).toMatch(/^control +id +usage +bit +bits +range$/mu);
    expect(ran.stdout).toMatch(/^input +– +0001:0030 +24 +8 +0 … 255$/mu);
    expect(ran.stdout).not.toContain('\u001b');
  });

  it('takes a form that is forced at its word', async () => {
    const text = await fileOf('d.txt', hex);
    expect((await stickwright(['descriptor', text, '--hex', '--json'])).code).toBe(0);
    const forced = await stickwright(['descriptor', text, '--bytes', '--json']);
    expect(forced.code).toBe(1);
    expect(forced.stderr).toMatch(ONE_LINE);
  });

  it('has goldens to try', () => {
    expect(readdirSync(folder).filter((name) => name.endsWith('.json')).length).toBeGreaterThan(20);
  });

  it.each([
    ['a file that is not there', ['descriptor', '/nowhere/d.bin']],
    ['a folder', ['descriptor', '/tmp']],
  ])('says in one line that it cannot read %s', async (_, args) => {
    const ran = await stickwright(args);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });

  it.each([
    ['nothing', ''],
    ['random bytes', Uint8Array.from({ length: 400 }, (_, index) => (index * 73 + 11) & 0xff)],
    ['hex of odd length', '05010'],
    ['words', 'this is no descriptor'],
    ['a cut item', Uint8Array.of(0x05)],
  ])('refuses %s in one line', async (_, content) => {
    const ran = await stickwright(['descriptor', await fileOf('d', content)]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});
