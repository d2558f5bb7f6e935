/** Which steps `survey` takes, and what it says of them. */
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../electron/shell/built.ts';
import { readLog } from '../support/read-log.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { stickwright } from './run-command.ts';

const MINUTES = 120_000;
const SMALL = ['--releases', '1', '--turns', '1', '--sweeps', '1', '--flicks', '1', '--stick', 'left'];

beforeAll(ensureBuilt, 120_000);

interface Ended {
  readonly step: string;
  readonly sticks: readonly Record<string, string>[];
  readonly captures: readonly { readonly stick: string | null; readonly purpose: string; readonly state: string }[];
}

async function survey(...args: string[]) {
  const out = path.join(await temporaryFolder(), 'survey.padlog');
  const ran = await stickwright(['survey', '--demo', 'healthy', '--out', out, '--json', ...SMALL, ...args]);
  expect(ran.code).toBe(0);
  return { ended: JSON.parse(ran.stdout) as Ended, said: ran.stderr, out };
}

describe('steps of stickwright survey', () => {
  it(
    'are rest, rim, travel and flicks of each stick and the inputs, unless others are named',
    { timeout: MINUTES },
    async () => {
      const { ended, said, out } = await survey();
      expect(ended.step).toBe('done');
      expect(ended.sticks).toEqual([{ stick: 'left', rest: 'taken', rim: 'taken', travel: 'taken', flick: 'taken' }]);
      expect(ended.captures.at(-1)).toMatchObject({ stick: null, purpose: 'inputs', state: 'taken' });
      expect(said).toBe('left stick: rest\nleft stick: rim\nleft stick: travel\nleft stick: flick\ninputs\n');
      const { entries } = await readLog(out);
      const towards = entries.filter((entry) => entry.includes(' toward '));
      expect(towards.length).toBeGreaterThanOrEqual(5);
    },
  );

  it(
    'are taken in working order, whatever the order they are named in, with single disturbances by name',
    { timeout: MINUTES },
    async () => {
      const { ended, said } = await survey('--steps', 'inputs,charger,rest,click');
      expect(ended.captures.map(({ purpose }) => purpose)).toEqual(['rest', 'disturbance', 'disturbance', 'inputs']);
      expect(said).toBe(
        'left stick: rest\nleft stick: rest with the charger in\nleft stick: rest with the click held\ninputs\n',
      );
    },
  );

  it('that are not known are bad usage, and nothing is written', async () => {
    const out = path.join(await temporaryFolder(), 'survey.padlog');
    const ran = await stickwright(['survey', '--demo', 'healthy', '--out', out, '--steps', 'rest,dance']);
    expect(ran).toMatchObject({ code: 2, stdout: '' });
    expect(ran.stderr).toContain('There is no step "dance"');
  });
});
