import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../electron/shell/built.ts';
import { fileOf, ONE_LINE, stickwright } from './run-command.ts';

let folder: string;
let log: string;

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-consumers-'));
  log = path.join(folder, 'off-centre.padlog');
  await stickwright(['survey', '--demo', 'off-centre', '--out', log]);
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const consumer = (takes: string): string =>
  JSON.stringify({
    kind: 'stickwright-consumer',
    version: 1,
    name: 'bench game',
    takes,
    chains: { left: { stages: [] } },
    needs: 0.9,
  });

const driver = JSON.stringify({
  kind: 'stickwright-chain',
  version: 1,
  name: 'bench driver',
  stages: [{ zone: 'scaledRadial', inner: 0.2, outer: 1 }],
});

interface Answer {
  readonly driver: string | null;
  readonly consumers: readonly {
    readonly sticks: Record<
      string,
      {
        readonly says: readonly string[];
        readonly leak: number;
        readonly smallestDriverZone: { observed: number | null };
      }
    >;
  }[];
}

describe('stickwright consumers', () => {
  it('judges the published rules, a row each, both sticks', async () => {
    const ran = await stickwright(['consumers', log]);
    expect(ran).toMatchObject({ code: 0 });
    expect(ran.stdout).toMatch(/^ {2}Browser gamepad interface, no zone +leaks [\d.]+ % of full output/mu);
    expect(ran.stdout).toMatch(/^right stick$/mu);
  });

  it('shows that a driver helps only the consumer that takes its output', async () => {
    const judge = async (takes: string): Promise<Answer> => {
      const files = [await fileOf('consumer.json', consumer(takes)), await fileOf('driver.json', driver)] as const;
      const ran = await stickwright(['consumers', log, '--consumer', files[0], '--driver', files[1], '--json']);
      return JSON.parse(ran.stdout) as Answer;
    };
    const behind = (await judge('driver')).consumers[0]?.sticks['left'];
    expect(behind?.says).toContain('hidden');
    expect(behind?.smallestDriverZone.observed).toBeGreaterThan(0.05);
    const alone = (await judge('pad')).consumers[0]?.sticks['left'];
    expect(alone?.says).toContain('leaks');
    expect(alone?.smallestDriverZone.observed).toBeNull();
  });

  it('refuses a consumer file that is none in one line', async () => {
    const ran = await stickwright(['consumers', log, '--consumer', await fileOf('bad.json', driver)]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});
