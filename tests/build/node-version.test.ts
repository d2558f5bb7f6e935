/** What the program says it needs of Node is what its packages need, and is said before anything breaks on an older one. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../electron/shell/built.ts';
import { runNode } from '../electron/shell/run-node.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { writeFile } from 'node:fs/promises';

interface CheckNode {
  readonly fits: (version: string, range: string) => boolean;
  readonly wordsFor: (range: string) => string;
}

const checkNode: string = '../../build/check-node.js';
const { fits, wordsFor } = (await import(checkNode)) as CheckNode;
const { engines } = JSON.parse(readFileSync(projectFile('package.json'), 'utf8')) as { engines: { node: string } };

/** The first and a late version of every part of the range. */
const PROMISED = ['22.22.2', '22.99.0', '24.15.0', '24.99.0', '26.0.0', '30.1.0'];

describe('the Node that is needed', () => {
  it('is what every package that is installed can run on', () => {
    const lock = JSON.parse(readFileSync(projectFile('package-lock.json'), 'utf8')) as {
      packages: Record<string, { engines?: { node?: string } | string[]; optional?: boolean }>;
    };
    const wants = Object.entries(lock.packages).flatMap(([name, { engines: own, optional }]) =>
      own === undefined || Array.isArray(own) || own.node === undefined || optional === true
        ? []
        : [[name, own.node] as const],
    );
    expect(wants.length).toBeGreaterThan(100);
    const unmet = PROMISED.flatMap((version) =>
      wants.filter(([, range]) => !takes(version, range)).map(([name, range]) => `${name} ${range} on ${version}`),
    );
    expect(unmet).toEqual([]);
    expect(PROMISED.every((version) => fits(version, engines.node))).toBe(true);
    expect(
      ['20.20.2', '22.21.9', '23.11.0', '24.14.0', '25.1.0', '18.0.0'].filter((version) => fits(version, engines.node)),
    ).toEqual([]);
  });

  it('stands in the README as in package.json', () => {
    expect(wordsFor(engines.node)).toBe('22.22 or newer of 22, 24.15 or newer of 24, 26.0 or newer');
    expect(readFileSync(projectFile('README.md'), 'utf8')).toContain(
      'Node 22.22 or newer of 22, 24.15 or newer of 24, or 26 and newer',
    );
  });

  it.each(['start.js', 'test.js', 'stickwright.js'])(
    'is said by %s in one sentence on an older one',
    async (script) => {
      const fake = path.join(await temporaryFolder(), 'fake.mjs');
      await writeFile(
        fake,
        `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '20.20.2' } });`,
      );
      const ran = await runNode([`--import=${fake}`, projectFile(`build/${script}`)]);
      expect(ran).toEqual({
        code: 1,
        stdout: '',
        stderr: `Stickwright needs Node ${wordsFor(engines.node)}, and this is Node 20.20.2; install one of those and try again.\n`,
      });
    },
  );
});

/** Whether a range of a package takes a version, for the signs that ranges are written with here. */
function takes(version: string, range: string): boolean {
  return range.split('||').some((part) =>
    part
      .trim()
      .replace(/(>=|<=|>|<|\^|~)\s+/gu, '$1')
      .split(/\s+/u)
      .every((one) => takesOne(version.split('.').map(Number), one)),
  );
}

function takesOne(have: readonly number[], one: string): boolean {
  const [, sign = '', text = ''] = /^(>=|<|\^|~)?v?([\d.x*]*)$/u.exec(one) ?? [];
  const need = text
    .split('.')
    .filter((place) => /^\d+$/u.test(place))
    .map(Number);
  if (need.length === 0) return text === '*' || text === '';
  const order = [0, 1, 2].map((place) => (have[place] ?? 0) - (need[place] ?? 0)).find((gap) => gap !== 0) ?? 0;
  if (sign === '>=') return order >= 0;
  if (sign === '<') return order < 0;
  if (sign === '^') return order >= 0 && have[0] === need[0];
  return need.every((number, place) =>
    sign === '~' && place === 2 ? (have[2] ?? 0) >= number : have[place] === number,
  );
}
