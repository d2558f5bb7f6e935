import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../electron/shell/built.ts';
import { ONE_LINE, stickwright } from './run-command.ts';

let folder: string;
beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-compare-'));
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Comparison {
  readonly sticks: Record<string, { readonly measure: string; readonly differs: boolean | null }[]>;
}

describe('stickwright self-check', () => {
  it.each(['1', '7'])('holds on a simulated pad of seed %s', async (seed) => {
    const ran = await stickwright(['self-check', '--seed', seed, '--json']);
    expect(ran).toMatchObject({ code: 0, stderr: '' });
    const { items } = JSON.parse(ran.stdout) as { items: { of: string; holds: boolean }[] };
    expect(items).toHaveLength(21);
    expect(items.filter(({ holds }) => !holds)).toEqual([]);
  });
});

describe('stickwright compare', () => {
  const survey = async (demo: string, seed: string): Promise<string> => {
    const log = path.join(folder, `${demo}-${seed}.padlog`);
    await stickwright([
      'survey',
      '--demo',
      demo,
      '--seed',
      seed,
      '--out',
      log,
      '--steps',
      'rest,rim',
      '--stick',
      'left',
    ]);
    return log;
  };

  it('calls two surveys of one pad the same, and those of another part different', async () => {
    const [first, again, other] = [
      await survey('healthy', '1'),
      await survey('healthy', '2'),
      await survey('off-centre', '1'),
    ];
    const compare = async (second: string): Promise<string[]> => {
      const ran = await stickwright(['compare', first, second, '--json']);
      const { sticks } = JSON.parse(ran.stdout) as Comparison;
      return (sticks['left'] ?? []).filter(({ differs }) => differs === true).map(({ measure }) => measure);
    };
    // Twelve measures at 5 % each: now and then one of them differs by chance.
    expect((await compare(again)).length).toBeLessThanOrEqual(2);
    expect(await compare(other)).toEqual(expect.arrayContaining(['restX', 'restY', 'offset', 'leastReach']));
  });

  it('says in one line which log cannot be read', async () => {
    const ran = await stickwright(['compare', path.join(folder, 'none.padlog'), path.join(folder, 'none.padlog')]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});
