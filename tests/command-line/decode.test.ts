import { readFileSync, readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, projectFile } from '../electron/shell/built.ts';
import { fileOf, jsonLines, ONE_LINE, stickwright } from './run-command.ts';

beforeAll(ensureBuilt, 120_000);

interface Golden {
  readonly id: string;
  readonly descriptorHex: string;
  readonly sampleReports: readonly {
    readonly hex: string;
    readonly expected: Readonly<Record<string, number>>;
    readonly nullFields?: readonly string[];
  }[];
}

interface Line {
  readonly kind: string;
  readonly reportId: number | null;
  readonly values: Readonly<Record<string, number | null>>;
  readonly buttons: readonly number[];
}

const folder = projectFile('tests/golden/descriptors');
const goldens = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as Golden);

/** A bit mask as the list that `decode` prints. */
function listed(mask: number): number[] {
  return Array.from({ length: 32 }, (_, bit) => bit + 1).filter((button) => ((mask >>> (button - 1)) & 1) === 1);
}

describe('stickwright decode', () => {
  it.each(goldens.map((golden) => [golden.id, golden] as const))(
    'decodes the sample reports of %s',
    async (_, golden) => {
      const descriptor = await fileOf('d.txt', golden.descriptorHex);
      const input = golden.sampleReports.map(({ hex }) => hex).join('\n');
      const ran = await stickwright(['decode', '--descriptor', descriptor, '-'], `${input}\n\n`);
      expect(ran).toMatchObject({ code: 0, stderr: '' });
      const lines = jsonLines<Line>(ran);
      expect(lines).toHaveLength(golden.sampleReports.length);
      for (const [index, { expected, nullFields = [] }] of golden.sampleReports.entries()) {
        const { buttons, ...values } = expected;
        for (const [key, value] of Object.entries(values))
          expect([key, lines[index]?.values[key]]).toEqual([key, nullFields.includes(key) ? null : value]);
        if (buttons !== undefined) expect(lines[index]?.buttons).toEqual(listed(buttons));
        expect(lines[index]?.kind).toBe('stickwright-decoded-report');
      }
    },
  );

  it('goes on after a report that cannot be decoded, and ends with 1', async () => {
    const descriptor = await fileOf(
      'd.txt',
      '05010904a101850109300931 15002 6ff00 75089502 8102 c0'.replaceAll(' ', ''),
    );
    const reports = await fileOf('r.txt', '01 10 20\r\n09 10 20\n\n01 10\nzz\n01 30 40\n');
    const ran = await stickwright(['decode', '--descriptor', descriptor, reports]);
    expect(ran.code).toBe(1);
    const lines = jsonLines<Partial<Line> & { error?: string; hex?: string }>(ran);
    expect(lines.map(({ values, hex }) => values ?? hex)).toEqual([
      { '0001:0030': 16, '0001:0031': 32 },
      '09 10 20',
      '',
      '01 10',
      'zz',
      { '0001:0030': 48, '0001:0031': 64 },
    ]);
    for (const { error } of lines) if (error !== undefined) expect(error).toMatch(/\.$/u);
    expect(ran.stderr).toMatch(ONE_LINE);
  });

  it('takes an empty line alone for a report of 0 bytes', async () => {
    const ran = await stickwright(['decode', '--descriptor', await fileOf('d', '05010904a101c0'), '-'], '\n');
    expect(ran.code).toBe(1);
    expect(jsonLines(ran)).toEqual([expect.objectContaining({ hex: '', error: expect.any(String) as string })]);
  });

  it('says what is wrong where descriptor or reports cannot be had', async () => {
    const descriptor = await fileOf('d', '05010904a101c0');
    for (const args of [
      ['decode', '--descriptor', '/nowhere', '-'],
      ['decode', '--descriptor', descriptor, '/nowhere'],
      ['decode', '--descriptor', descriptor, '/tmp'],
    ]) {
      const ran = await stickwright(args);
      expect(ran).toMatchObject({ code: 1, stdout: '' });
      expect(ran.stderr).toMatch(ONE_LINE);
    }
    expect((await stickwright(['decode', '--descriptor', '-', '-'])).code).toBe(2);
  });
});
