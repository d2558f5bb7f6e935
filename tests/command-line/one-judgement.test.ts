/** One log, one judgement: what the app says of an imported log and what the command line prints of it are the same. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { predict } from '../../core/proposal/predict.ts';
import { compareLogs } from '../../electron/shell/command-line/compare.ts';
import { judgeForFile } from '../../electron/shell/command-line/consumers.ts';
import { measureFile } from '../../electron/shell/command-line/measure.ts';
import { proposeForFile } from '../../electron/shell/command-line/propose.ts';
import type { Terminal } from '../../electron/shell/command-line/terminal.ts';
import { answerForFile } from '../../electron/shell/command-line/zones.ts';
import { KeptSettings } from '../../electron/store/settings.ts';
import { makeBench, valueOf, type TestBench } from '../electron/bench/make-bench.ts';
import { ensureBuilt, outFile } from '../electron/shell/built.ts';
import { runNode, type Ran } from '../electron/shell/run-node.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { fileOf, ONE_LINE, stickwright } from './run-command.ts';

const logs: Record<string, string> = {};

const SURVEYS: Readonly<Record<string, readonly string[]>> = {
  healthy: ['--demo', 'healthy', '--steps', 'rest,rim,inputs'],
  loose: ['--demo', 'loose', '--steps', 'rest,rim,flick', '--stick', 'left'],
  // One turn each way covers no direction, and few releases prove little.
  thin: ['--demo', 'plain', '--steps', 'rest,rim', '--releases', '5', '--turns', '1'],
  'one stick': ['--demo', 'stale', '--stick', 'left', '--steps', 'rest,rim'],
};

let surveys: string;

beforeAll(async () => {
  await ensureBuilt();
  surveys = await mkdtemp(path.join(tmpdir(), 'stickwright-one-judgement-'));
  for (const [name, args] of Object.entries(SURVEYS)) {
    const out = path.join(surveys, `${name}.padlog`);
    const ran = await stickwright(['survey', ...args, '--out', out]);
    if (ran.code !== 0) throw new Error(ran.stderr);
    logs[name] = out;
  }
  // A recording from elsewhere has no marks at all.
  const whole = await readFile(logs['healthy'] ?? '', 'utf8');
  const unmarked = whole.split('\n').filter((line) => !line.startsWith('["m"'));
  logs['unmarked'] = path.join(surveys, 'unmarked.padlog');
  await writeFile(logs['unmarked'], unmarked.join('\n'));
}, 300_000);
afterAll(() => rm(surveys, { recursive: true, force: true }));

interface Answer {
  readonly code: number;
  readonly printed: string;
  readonly said: readonly string[];
}

/** A bench and a command line that share one home; what a command does runs here, its process elsewhere. */
interface Home {
  readonly test: TestBench;
  readonly run: (...args: string[]) => Promise<Ran>;
  readonly ask: (does: (terminal: Terminal) => Promise<number>) => Promise<Answer>;
}

async function homeWith(settings: string | null): Promise<Home> {
  const home = await temporaryFolder();
  const folder = path.join(home, 'settings');
  await mkdir(folder);
  if (settings !== null) await writeFile(path.join(folder, 'settings.json'), settings);
  const kept = new KeptSettings(folder, () => new Date('2024-05-01T10:00:00Z'));
  return {
    test: await makeBench({ folder: home, settings: kept }),
    run: (...args) => runNode([outFile('main/command-line.js'), ...args], { env: { STICKWRIGHT_HOME: home } }),
    async ask(does) {
      vi.stubEnv('STICKWRIGHT_HOME', home);
      const [printed, said]: [string[], string[]] = [[], []];
      const code = await does({
        json: true,
        verbose: false,
        print: (text) => Promise.resolve(void printed.push(text)),
        say: (text) => void said.push(text),
      });
      vi.unstubAllEnvs();
      return { code, printed: printed.join(''), said };
    },
  };
}

async function importLog({ test }: Home, log: string): Promise<string> {
  const bytes = await readFile(log);
  let survey: string | undefined;
  for (let from = 0; from < bytes.length; from += 393_216) {
    const [piece, last] = [bytes.subarray(from, from + 393_216).toString('base64'), from + 393_216 >= bytes.length];
    survey = valueOf(await test.bench.handle('surveys.import', { upload: 'u', name: 'log', piece, last })).survey
      ?.survey;
  }
  if (survey === undefined) throw new Error('The log was not taken in.');
  return survey;
}

const withoutKind = (value: object): object => ({ ...value, kind: null });

const OWN = { offCentre: 0.001, seat: 0.0005, releases: 30, uncovered: 80, overshoot: 0.9 };
const IMPOSSIBLE = { releases: 3, uncovered: 200, ofANewerVersion: 1, noise: 0.00001 };

const CASES: readonly (readonly [string, string, object | null])[] = [
  ['healthy', 'no settings', null],
  ['healthy', 'limits of the bench’s own', OWN],
  ['healthy', 'limits that cannot be', IMPOSSIBLE],
  ['loose', 'limits of the bench’s own', OWN],
  ['thin', 'no settings', null],
  ['thin', 'limits of the bench’s own', OWN],
  ['one stick', 'no settings', null],
  ['unmarked', 'limits of the bench’s own', OWN],
];

describe('a log is judged alike by the app and the command line', () => {
  it.each(CASES)('%s, with %s', { timeout: 120_000 }, async (name, _, limits) => {
    const log = logs[name] ?? '';
    const home = await homeWith(limits === null ? null : JSON.stringify({ limits }));
    const measured = await home.ask((terminal) => measureFile(terminal, log, {}));
    expect(measured.code).toBe(0);
    const survey = await importLog(home, log);
    const opened = valueOf(await home.test.bench.handle('surveys.open', { survey }));
    expect(withoutKind(JSON.parse(measured.printed) as object)).toEqual(withoutKind(opened.report));

    for (const aim of limits === null ? (['full-reach', 'even'] as const) : (['full-reach'] as const)) {
      const wish = { aim, centreBy: 'steadiest', guard: 0.01 } as const;
      const proposed = await home.ask((terminal) => proposeForFile(terminal, log, { ...wish, centre: wish.centreBy }));
      const { sticks = {} } = (proposed.code === 0 ? JSON.parse(proposed.printed) : {}) as {
        sticks?: Record<string, object>;
      };
      for (const stick of ['left', 'right'] as const) {
        const reply = await home.test.bench.handle('surveys.propose', { survey, stick, wish });
        const known = opened.sticks[stick];
        if (!reply.ok || known === undefined) {
          expect(sticks[stick]).toBeUndefined();
          if (!reply.ok && known !== undefined) expect(proposed.said.join('\n')).toContain(reply.problem.says);
          continue;
        }
        const [current, predicted] = [known.current, reply.value.mapping].map((one) => predict(known.evidence, one));
        expect(sticks[stick]).toEqual(JSON.parse(JSON.stringify({ ...reply.value, predicted, current })));
      }
    }
  });
});

interface Judged {
  readonly limits: Readonly<Record<string, { readonly value: number; readonly from: string }>>;
  readonly findings: readonly { readonly id: string; readonly limit: number | null }[];
}

describe('the limits of a command', () => {
  const judged = (ran: Ran): Judged => {
    expect(ran.code).toBe(0);
    return JSON.parse(ran.stdout) as Judged;
  };

  it('are a file’s, else the settings’, else the program’s own, and which is printed', async () => {
    const { run } = await homeWith(JSON.stringify({ limits: { offCentre: 0.02, seat: 0.05 } }));
    const file = await fileOf('limits.json', '{"limits":{"offCentre":0.07}}');
    const { limits, findings } = judged(await run('measure', logs['thin'] ?? '', '--json', '--limits', file));
    expect(limits['offCentre']).toEqual({ value: 0.07, from: 'file' });
    expect(limits['seat']).toEqual({ value: 0.05, from: 'settings' });
    expect(limits['turn']).toMatchObject({ from: 'default' });
    expect(findings.find(({ id }) => id === 'off-centre-part')?.limit).toBe(0.07);

    const table = await run('measure', logs['thin'] ?? '', '--limits', file);
    const [, own] = table.stdout.split("limits that are not the program's own");
    expect(own).toMatch(
      /offCentre +0\.07 +share of the half travel, from the limits file\n +seat +0\.05 +[^\n]*settings/u,
    );
    expect(own).not.toContain('turn');
    expect((await run('measure', logs['thin'] ?? '')).stdout).not.toContain('limits file');
  });

  it('rule propose, zones, consumers and compare, too', async () => {
    const { ask } = await homeWith(null);
    const limits = await fileOf('limits.json', '{"limits":{"releases":40,"uncovered":85,"seat":0.0001}}');
    const head = { kind: 'stickwright-chain', version: 1, name: 'c', needs: null };
    const chain = await fileOf('chain.json', JSON.stringify({ ...head, stages: [{ zone: 'radial', inner: 0.3 }] }));
    const log = logs['one stick'] ?? '';
    type Does = (terminal: Terminal, more: { limits?: string }) => Promise<number>;
    const both = async (does: Does): Promise<readonly [usual: unknown, strict: unknown]> => {
      const [usual, strict] = [await ask((one) => does(one, {})), await ask((one) => does(one, { limits }))];
      const answer = ({ code, printed }: Answer, releases: number): unknown => {
        expect(code).toBe(0);
        const value = JSON.parse(printed) as { sticks?: { left: unknown }; limits: Judged['limits'] };
        expect(value.limits['releases']?.value).toBe(releases);
        return value.sticks?.left;
      };
      return [answer(usual, 12), answer(strict, 40)];
    };

    const zones = await both((one, more) => answerForFile(one, log, { chain, ...more }));
    expect(zones[0]).toMatchObject({ hides: 'hidden' });
    expect(zones[1]).toMatchObject({ hides: expect.stringMatching(/^hidden in/u) as string });

    const wish = { aim: 'full-reach', centre: 'steadiest', guard: 0.01 } as const;
    const proposed = await both((one, more) => proposeForFile(one, log, { ...wish, ...more }));
    expect(proposed[0]).toMatchObject({ hides: null });
    expect(proposed[1]).toMatchObject({
      hides: expect.stringContaining('seat not flat') as string,
      predicted: { rest: { toleranceRadius: null } },
    });

    const compared = await both((one, more) => compareLogs(one, more, log, log));
    const [usual, strict] = compared.map(
      (items) =>
        (items as { measure: string; first: unknown }[]).find(({ measure }) => measure === 'toleranceRadius')?.first,
    );
    expect(usual).toBeGreaterThan(0);
    expect(strict).toBeNull();
    await both((one, more) => judgeForFile(one, log, more));
  });

  it.each([
    ['an unknown limit', '{"limits":{"offcentre":0.05}}', 'offcentre'],
    ['a text', '{"limits":{"seat":"0.05"}}', 'seat'],
    ['zero', '{"limits":{"seat":0}}', 'seat'],
    ['no limits', '{"seat":0.05}', 'limits'],
    ['no JSON', 'seat=0.05', 'limits.json'],
  ])('are refused by name for %s, before any log is read', async (_, content, name) => {
    const { ask } = await homeWith(null);
    const file = await fileOf('limits.json', content);
    const wish = { aim: 'even', centre: 'mean', guard: 0, limits: file } as const;
    for (const does of [
      (terminal: Terminal) => measureFile(terminal, 'not-there.padlog', { limits: file }),
      (terminal: Terminal) => proposeForFile(terminal, 'not-there.padlog', wish),
    ]) {
      const { code, printed, said } = await ask(does);
      expect({ code, printed, lines: said.length }).toEqual({ code: 1, printed: '', lines: 1 });
      expect(`${said[0] ?? ''}\n`).toMatch(ONE_LINE);
      expect(said[0]).toContain(name);
      expect(said[0]).not.toMatch(/Invalid|received|not-there/u);
    }
  });

  it.each([
    ['no JSON', '{"limits":'],
    ['a limit below zero', '{"limits":{"seat":-1}}'],
    ['a list', '[]'],
  ])('are the program’s own where the settings hold %s, which is said and moved nowhere', async (_, content) => {
    const { ask, test } = await homeWith(content);
    const { code, printed, said } = await ask((terminal) => measureFile(terminal, logs['thin'] ?? '', {}));
    expect(code).toBe(0);
    expect((JSON.parse(printed) as Judged).limits['seat']).toMatchObject({ from: 'default' });
    expect(said).toEqual([expect.stringMatching(/settings\.json cannot be understood[^\n]*own limits hold\.$/u)]);
    expect(await readFile(path.join(test.folder, 'settings', 'settings.json'), 'utf8')).toBe(content);
  });

  it('that are in the settings and cannot be are named, one line each', async () => {
    const { run } = await homeWith(JSON.stringify({ limits: { releases: 3, ofANewerVersion: 1 } }));
    const ran = await run('measure', logs['thin'] ?? '', '--json');
    expect(judged(ran).limits['releases']).toEqual({ value: 12, from: 'default' });
    expect(ran.stderr.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^In the settings: .*releases.* not used\.$/u),
      expect.stringMatching(/^In the settings: .*ofANewerVersion.* not used\.$/u),
    ]);
  });
});
