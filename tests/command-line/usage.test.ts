import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, projectFile } from '../electron/shell/built.ts';
import { runNode } from '../electron/shell/run-node.ts';
import { stickwright } from './run-command.ts';

beforeAll(ensureBuilt, 120_000);

describe('usage of the command line', () => {
  it.each([
    [[]],
    [['fly']],
    [['measure']],
    [['measure', 'a', 'b']],
    [['measure', 'a', '--speed']],
    [['decode', 'x']],
    [['zones', 'x']],
    [['survey', '--demo', 'healthy']],
    [['survey', '--out', 'x']],
    [['survey', '--out', 'x', '--demo', 'healthy', '--pad', '/dev/hidraw0']],
    [['survey', '--out', 'x', '--demo', 'healthy', '--releases', '0']],
    [['watch', '--demo', 'healthy', '--log', 'x']],
    [['watch', '--demo', 'healthy', '--seconds', 'soon']],
    [['propose', 'x', '--aim', 'best']],
    [['propose', 'x', '--guard', '2']],
    [['descriptor', 'x', '--hex', '--bytes']],
  ])('ends with 2 and says nothing on standard output for %j', async (args) => {
    const ran = await stickwright(args);
    expect(ran.code).toBe(2);
    expect(ran.stdout).toBe('');
    expect(ran.stderr).not.toBe('');
    expect(ran.stderr).not.toMatch(/^\s+at /mu);
  });

  it('explains every command of the design and ends with 0', async () => {
    const ran = await stickwright(['--help']);
    expect(ran.code).toBe(0);
    for (const name of [
      'pads',
      'watch',
      'descriptor',
      'decode',
      'survey',
      'measure',
      'propose',
      'zones',
      'image',
      'memory',
    ])
      expect(ran.stdout).toMatch(new RegExp(`^  ${name}\\b`, 'mu'));
  });

  it('runs from a clone with nothing but its own output on standard output', async () => {
    const ran = await runNode([projectFile('build/stickwright.js'), 'descriptor', '-', '--json'], {
      input: '05 01 09 04 a1 01 c0',
    });
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.stdout)).toMatchObject({
      kind: 'stickwright-descriptor',
      version: 1,
      reports: [],
      controls: [],
    });
    const scripts = (
      JSON.parse(readFileSync(projectFile('package.json'), 'utf8')) as { scripts: Record<string, string> }
    ).scripts;
    expect(scripts['stickwright']).toBe('node build/stickwright.js');
  });
});
