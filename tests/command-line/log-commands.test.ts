/** The commands that work on a report log, on one that the command line made itself. */
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt } from '../electron/shell/built.ts';
import type { Ran } from '../electron/shell/run-node.ts';
import { fileOf, jsonLines, ONE_LINE, stickwright } from './run-command.ts';

let folder: string;
let log: string;
let surveyed: Ran;

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-commands-'));
  log = path.join(folder, 'healthy.padlog');
  surveyed = await stickwright(['survey', '--demo', 'healthy', '--out', log, '--stage', 'fitted', '--json']);
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const radial = (inner: number): string =>
  JSON.stringify({
    kind: 'stickwright-chain',
    version: 1,
    name: 'test',
    stages: [{ zone: 'radial', inner }],
    needs: 0.9,
  });

interface Measured {
  readonly kind: string;
  readonly log: { readonly reports: number; readonly stage: string; readonly domain: string };
  readonly mappingFrom: string;
  readonly captures: string;
  readonly sticks: Record<
    string,
    {
      readonly rest: { readonly releases: number; readonly toleranceRadius: number };
      readonly rim: {
        readonly directions: readonly { readonly angle: number; readonly state: string }[];
        readonly leastReach: { readonly value: number };
      };
    }
  >;
}

async function measured(...args: string[]): Promise<Measured> {
  const ran = await stickwright(['measure', log, '--json', ...args]);
  expect(ran).toMatchObject({ code: 0, stderr: '' });
  return JSON.parse(ran.stdout) as Measured;
}

describe('stickwright survey', () => {
  it('runs a whole survey of a simulated pad and says what it took', () => {
    expect(surveyed.code).toBe(0);
    expect(JSON.parse(surveyed.stdout)).toMatchObject({
      kind: 'stickwright-survey-end',
      version: 1,
      log,
      step: 'done',
      sticks: [
        { stick: 'left', rest: 'taken', rim: 'taken' },
        { stick: 'right', rest: 'taken', rim: 'taken' },
      ],
      problem: null,
    });
    expect(surveyed.stderr).toContain('left stick: rest');
  });

  it('draws the same readings from the same seed, and others from another', async () => {
    const readings = async (name: string, seed: string): Promise<string> => {
      const out = path.join(folder, name);
      const args = ['--releases', '1', '--turns', '1', '--stick', 'left', '--seed', seed];
      expect((await stickwright(['survey', '--demo', 'worn', '--out', out, ...args])).code).toBe(0);
      return (await readFile(out, 'utf8')).split('\n').slice(1).join('\n');
    };
    const [a, b, c] = [await readings('a', '7'), await readings('b', '7'), await readings('c', '8')];
    expect(a).toBe(b);
    expect(a).not.toBe(c);
  });

  it('never overwrites a log unless it is told to', async () => {
    const out = await fileOf('kept.padlog', 'precious');
    const ran = await stickwright(['survey', '--demo', 'healthy', '--out', out]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
    expect(await readFile(out, 'utf8')).toBe('precious');
    const args = ['--force', '--releases', '1', '--turns', '1', '--stick', 'right'];
    expect((await stickwright(['survey', '--demo', 'plain', '--out', out, ...args])).code).toBe(0);
    expect(await readFile(out, 'utf8')).toContain('"stickwright-report-log"');
  });

  it.each([
    ['an unknown demo', ['--demo', 'perfect', '--out', 'x.padlog']],
    ['a folder that is not there', ['--demo', 'healthy', '--out', '/nowhere/x.padlog']],
    ['a pad that is not there', ['--pad', '/dev/hidraw-none', '--out', 'x.padlog']],
  ])('says in one line that it cannot work with %s', async (_, args) => {
    const ran = await stickwright(['survey', ...args]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
    expect(existsSync('x.padlog')).toBe(false);
  });
});

describe('stickwright measure', () => {
  it('prints the keys that are fixed', async () => {
    const report = await measured();
    expect(report).toMatchObject({
      kind: 'stickwright-measure',
      version: 1,
      log: { stage: 'fitted', domain: 'sensor' },
      mappingFrom: 'stored',
      captures: 'marked',
      findings: expect.any(Array) as unknown,
      verdict: { left: expect.any(String) as unknown, right: expect.any(String) as unknown },
    });
    expect(Object.keys(report.sticks)).toEqual(['left', 'right']);
    for (const stick of Object.values(report.sticks)) {
      expect(stick.rest.releases).toBe(24);
      expect(stick.rim.directions.map(({ angle }) => angle)).toEqual(Array.from({ length: 72 }, (_, i) => 5 * i));
      expect(stick.rim.directions.every(({ state }) => state === 'covered')).toBe(true);
    }
  });

  it('looks finer in a gate that another survey tells of, and says from what it is known', async () => {
    interface Judged {
      readonly findings: readonly {
        readonly id: string;
        readonly stick: string;
        readonly u95: number;
        readonly for: string[];
      }[];
    }
    const seat = async (...args: string[]) => {
      const ran = await stickwright(['measure', log, '--json', ...args]);
      expect(ran.stderr).toBe('');
      const { findings } = JSON.parse(ran.stdout) as Judged;
      return findings.find(({ id, stick }) => id === 'seat-not-flat' && stick === 'left')!;
    };
    const known = await seat('--gate-from', log, '--gate-as', 'reference-part');
    expect(known.u95).toBeLessThan(0.7 * (await seat()).u95);
    expect(known.for[0]).toBe('The waves of the gate are known from a reference part in this shell.');
  });

  it('says what a known gate needs where it is half said, unknown or untold', async () => {
    const half = await stickwright(['measure', log, '--gate-from', log]);
    expect(half).toMatchObject({ code: 1, stdout: '' });
    expect(half.stderr).toContain('needs both --gate-from LOG and --gate-as');
    expect((await stickwright(['measure', log, '--gate-as', 'guess'])).code).toBe(2);
    const gone = await stickwright(['measure', log, '--gate-from', `${log}.gone`, '--gate-as', 'ring-turned']);
    expect(gone.code).toBe(1);
    expect(gone.stderr).toMatch(ONE_LINE);
    const short = await fileOf('header.padlog', (await readFile(log)).subarray(0, 20_000));
    const untold = await stickwright(['measure', log, '--gate-from', short, '--gate-as', 'earlier-part']);
    expect(untold).toMatchObject({ code: 1, stdout: '' });
    expect(untold.stderr).toContain('tells of no gate: it needs a rest and a covered rim');
  });

  it('measures under a mapping file', async () => {
    const axis = { min: 0, centre: 2048, max: 4095 };
    const mapping = await fileOf(
      'm.json',
      JSON.stringify({
        kind: 'stickwright-mapping',
        version: 1,
        sticks: { left: { x: axis, y: axis }, right: { x: axis, y: axis } },
      }),
    );
    const report = await measured('--mapping', mapping);
    expect(report.mappingFrom).toBe('file');
    expect(report.sticks['left']?.rim.leastReach.value).toBeLessThan(0.7);
  });

  it('prints tables for a person, without colours', async () => {
    const ran = await stickwright(['measure', log]);
    expect(ran.stdout).toContain('left stick, rest');
    expect(ran.stdout).toMatch(/releases +24/u);
    expect(ran.stdout).not.toContain('\u001b');
    for (const line of ran.stdout.split('\n')) expect(line).toBe(line.trimEnd());
  });

  it('reads a log that was cut anywhere, and says so', async () => {
    const whole = await readFile(log);
    const ran = await stickwright(['measure', await fileOf('cut.padlog', whole.subarray(0, 1_000_001)), '--json']);
    expect(ran.code).toBe(0);
    expect(ran.stderr).toMatch(/^.* ends inside a line; everything before it is used\.\n/u);
  });

  it('leaves a line out that is no JSON, and says which, whatever looks at the log', async () => {
    const lines = (await readFile(log, 'utf8')).split('\n');
    lines[1000] = (lines[1000] ?? '').slice(0, 8);
    const file = await fileOf('hole.padlog', lines.join('\n'));
    const says = /^1 line of the log is damaged and left out, the first is line 1001: /mu;
    const measure = await stickwright(['measure', file, '--json']);
    expect(measure).toMatchObject({ code: 0, stderr: expect.stringMatching(says) as string });
    const whole = JSON.parse((await stickwright(['measure', log, '--json'])).stdout) as { log: { reports: number } };
    const { log: told } = JSON.parse(measure.stdout) as { log: { reports: number; damaged: number } };
    expect(told).toMatchObject({ reports: whole.log.reports - 1, damaged: 1 });
    const watch = await stickwright(['watch', '--log', file]);
    expect(watch).toMatchObject({ code: 0, stderr: expect.stringMatching(says) as string });
    const propose = await stickwright(['propose', file, '--json']);
    expect(propose).toMatchObject({ code: 0, stderr: expect.stringMatching(says) as string });
  });

  it.each([
    ['a file that is not there', null],
    ['an empty file', ''],
    ['another kind of file', '<html></html>'],
    ['JSON of another kind', '{"kind":"stickwright-mapping","version":1}\n'],
    ['a later version', '{"kind":"stickwright-report-log","version":2}\n'],
    ['a log cut inside its header', '{"kind":"stickwright-report-log","ver'],
    [
      'a log without reports',
      '{"kind":"stickwright-report-log","version":1,"startedAt":"2024-01-01T00:00:00Z","pad":{"vendorId":1,"productId":2,"product":"","serial":null,"transport":"usb"},"descriptor":null,"profile":null}\n',
    ],
  ])('refuses %s in one line', async (_, content) => {
    const file = content === null ? '/nowhere.padlog' : await fileOf('bad.padlog', content);
    for (const command of [
      ['measure', file],
      ['propose', file],
      ['watch', '--log', file],
    ]) {
      const ran = await stickwright(command);
      expect(ran).toMatchObject({ code: 1, stdout: '' });
      expect(ran.stderr).toMatch(ONE_LINE);
    }
  });

  it.each([
    ['no JSON', '{'],
    ['min above centre', { left: { x: { min: 9, centre: 5, max: 10 }, y: { min: 0, centre: 5, max: 10 } } }],
    ['equal min and centre', { left: { x: { min: 5, centre: 5, max: 10 }, y: { min: 0, centre: 5, max: 10 } } }],
    ['a number that is none', { left: { x: { min: null, centre: 5, max: 10 }, y: { min: 0, centre: 5, max: 10 } } }],
    ['no stick', {}],
  ])('refuses a mapping file with %s in one line', async (_, sticks) => {
    const text =
      typeof sticks === 'string' ? sticks : JSON.stringify({ kind: 'stickwright-mapping', version: 1, sticks });
    const ran = await stickwright(['measure', log, '--mapping', await fileOf('m.json', text)]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});

describe('stickwright propose', () => {
  it.each(['full-reach', 'even', 'edges'])(
    'proposes for the aim %s, and its mapping does what was predicted',
    async (aim) => {
      const out = path.join(folder, `${aim}.json`);
      const ran = await stickwright(['propose', log, '--aim', aim, '--out', out, '--json']);
      expect(ran.code).toBe(0);
      const { kind, sticks } = JSON.parse(ran.stdout) as {
        kind: string;
        sticks: Record<
          string,
          { aim: string; predicted: { rim: { leastReach: { value: number } } }; mapping: unknown; reasons: unknown[] }
        >;
      };
      expect(kind).toBe('stickwright-proposal');
      const report = await measured('--mapping', out);
      const file = JSON.parse(await readFile(out, 'utf8')) as {
        kind: string;
        domain: string;
        sticks: Record<string, unknown>;
      };
      expect(file).toMatchObject({
        kind: 'stickwright-mapping',
        version: 1,
        domain: 'sensor',
        pad: { serial: 'healthy-kept' },
      });
      for (const [stick, { predicted, mapping, reasons, aim: said }] of Object.entries(sticks)) {
        expect(said).toBe(aim);
        expect(reasons.length).toBeGreaterThanOrEqual(6);
        expect(file.sticks[stick]).toEqual(mapping);
        expect(report.sticks[stick]?.rim.leastReach.value).toBeCloseTo(predicted.rim.leastReach.value, 12);
        if (aim === 'full-reach') expect(predicted.rim.leastReach.value).toBeGreaterThanOrEqual(1.01);
      }
    },
  );

  it('never overwrites a file unless it is told to', async () => {
    const out = await fileOf('kept.json', 'precious');
    const ran = await stickwright(['propose', log, '--out', out]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
    expect(await readFile(out, 'utf8')).toBe('precious');
    expect((await stickwright(['propose', log, '--out', out, '--force'])).code).toBe(0);
    expect(await readFile(out, 'utf8')).toContain('stickwright-mapping');
  });

  it('says that it cannot write', async () => {
    const ran = await stickwright(['propose', log, '--out', '/nowhere/m.json', '--json']);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});

describe('stickwright zones', () => {
  it('answers for a chain that hides the rest, and for one that does not', async () => {
    const answer = async (inner: number) => {
      const ran = await stickwright(['zones', log, '--chain', await fileOf('c.json', radial(inner)), '--json']);
      expect(ran.code).toBe(0);
      const { sticks, ...head } = JSON.parse(ran.stdout) as {
        sticks: Record<
          string,
          {
            hides: string;
            leaks: { leaking: number; releases: number; upperBound95: number };
            onset: unknown[];
            gate: unknown[];
          }
        >;
      };
      const limits = { releases: { value: 12, from: 'default' } };
      expect(head).toEqual({ kind: 'stickwright-zones', version: 1, chain: 'test', limits });
      return sticks['left']!;
    };
    const wide = await answer(0.2);
    expect(wide.hides).toBe('hidden');
    expect(wide.leaks).toMatchObject({ releases: 24, leaking: 0 });
    expect(wide.leaks.upperBound95).toBeCloseTo(0.117, 3);
    expect([wide.onset.length, wide.gate.length]).toEqual([72, 72]);
    const narrow = await answer(0.0005);
    expect(narrow.hides).toBe('leaks');
    expect(narrow.leaks.leaking).toBeGreaterThan(12);
  });

  it('prints a table for a person', async () => {
    const ran = await stickwright(['zones', log, '--chain', await fileOf('c.json', radial(0.2))]);
    expect(ran.stdout).toMatch(/^left stick behind test$/mu);
    expect(ran.stdout).toMatch(/^ {2}rest +hidden$/mu);
  });

  it.each([
    ['an unknown stage', '{"kind":"stickwright-chain","version":1,"name":"x","stages":[{"zone":"oval","inner":0.1}]}'],
    ['another kind', '{"kind":"stickwright-mapping","version":1}'],
    ['no JSON', 'zone'],
  ])('refuses a chain file with %s in one line', async (_, content) => {
    const ran = await stickwright(['zones', log, '--chain', await fileOf('c.json', content)]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(ONE_LINE);
  });
});

describe('stickwright watch', () => {
  interface Reading {
    readonly kind: string;
    readonly t: number;
    readonly sticks: Record<string, { readonly x: number; readonly y: number }>;
  }

  it('replays a log with its own times, and the same as columns', async () => {
    const json = await stickwright(['watch', '--log', log, '--seconds', '0.05']);
    const csv = await stickwright(['watch', '--log', log, '--seconds', '0.05', '--csv']);
    expect(json.code).toBe(0);
    const readings = jsonLines<Reading>(json);
    expect(readings.length).toBeGreaterThan(40);
    expect(readings.every(({ kind, t }) => kind === 'stickwright-reading' && t <= 50_000)).toBe(true);
    const [head, ...rows] = csv.stdout.trim().split('\n');
    expect(head).toBe('t,left.x,left.y,right.x,right.y,trigger.left,trigger.right,hat,buttons');
    expect(rows.map((row) => row.split(',').slice(0, 3).map(Number))).toEqual(
      readings.map(({ t, sticks }) => [t, sticks['left']?.x, sticks['left']?.y]),
    );
  });

  it('watches a simulated pad for so long', async () => {
    const ran = await stickwright(['watch', '--demo', 'plain', '--seconds', '0.2']);
    expect(ran.code).toBe(0);
    const readings = jsonLines<Reading>(ran);
    expect(readings.length).toBeGreaterThan(40);
    expect(readings[0]?.t).toBe(0);
    expect(readings.at(-1)?.t).toBeLessThanOrEqual(200_000);
  });

  it('shows a log to its last whole line', async () => {
    const head = (await readFile(log, 'utf8')).split('\n').slice(0, 20).join('\n');
    const file = path.join(folder, 'short.padlog');
    await writeFile(file, `${head}\n["r",99999,1,"0c68`);
    const ran = await stickwright(['watch', '--log', file]);
    expect(ran.code).toBe(0);
    expect(ran.stderr).toContain('ends inside a line');
    expect(jsonLines(ran).length).toBeGreaterThan(10);
  });
});
