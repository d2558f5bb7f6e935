import { readdir, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { done } from '../../../core/result.ts';
import { demoNames } from '../../../core/simulate/demos.ts';
import { createRouter } from '../../../electron/bench/calls/router.ts';
import type { EventPayload } from '../../../shared/contract.ts';
import { readSampleBatch } from '../../../shared/sample-batch.ts';
import { ScriptedTransport, sourceOf } from './scripted-transport.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from './make-bench.ts';
import { smallLog } from './write-log.ts';

async function surveyed(test: TestBench): Promise<string> {
  const pad = await openFirst(test);
  await follow(test, pad);
  const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad, { releases: 12, turns: 3 })));
  await test.until(() => test.states.at(-1)?.step === 'done');
  return survey;
}

describe('bench', () => {
  it('says who it is and what is missing', async () => {
    const { bench } = await makeBench({ notices: ['Install it.'] });
    expect(valueOf(await bench.handle('bench.hello', {}))).toEqual({
      program: 'stickwright',
      version: '0.0.0-test',
      shell: 'local',
      notices: ['Install it.'],
    });
  });

  it('has the healthy simulated pad plugged in, and plugs others in by name', async () => {
    const { bench } = await makeBench();
    const changes: EventPayload<'pads.changed'>[] = [];
    bench.listen('pads.changed', (pads) => changes.push(pads));
    const demos = valueOf(await bench.handle('pads.demos', {}));
    expect(demos.map(({ name }) => name)).toEqual(demoNames);
    const plugged = valueOf(await bench.handle('pads.plugDemo', { name: 'worn' }));
    const products = valueOf(await bench.handle('pads.list', {})).map(({ identity }) => identity.product);
    expect(products).toEqual(['Bench pad, healthy', plugged.identity.product]);
    expect(changes).toHaveLength(1);
    expect(await bench.handle('pads.plugDemo', { name: 'perfect' })).toMatchObject({ ok: false });
  });

  it('streams an open pad to whoever listens, and stops when it is closed', async () => {
    const test = await makeBench();
    const times: number[] = [];
    const pads = new Set<string>();
    test.bench.samples((batch) => {
      const pad = readSampleBatch(batch, { report: (t) => times.push(t), gap: () => undefined });
      pads.add(valueOf(pad));
    });
    const health: EventPayload<'pad.health'>[] = [];
    test.bench.listen('pad.health', (one) => health.push(one));
    const pad = await openFirst(test);
    await test.pass(3000);
    expect(pads).toEqual(new Set([pad]));
    expect(times.length).toBeGreaterThan(2900);
    expect(health.at(-1)).toMatchObject({ pad, state: 'streaming', gaps: 0, lost: null, problem: null });
    expect(health.at(-1)?.rateHz).toBeCloseTo(1000, -1);
    valueOf(await test.bench.handle('pads.close', { pad }));
    const before = times.length;
    await test.pass(500);
    expect(times.length).toBe(before);
    expect(valueOf(await test.bench.handle('pads.list', {}))[0]?.open).toBe(false);
  });

  it('opens a pad once, however many ask for it, and again after it was closed', async () => {
    const transport = new ScriptedTransport('script', { serial: 'A1' });
    const watcher = {
      start: (hear: (pads: ReturnType<typeof sourceOf>[]) => void) => hear([sourceOf(transport)]),
      pause: () => undefined,
      resume: () => undefined,
      close: () => Promise.resolve(),
    };
    const { bench } = await makeBench({ watcher });
    const opens = await Promise.all([1, 2, 3].map(() => bench.handle('pads.open', { pad: 'pad-1' })));
    expect(opens.every(({ ok }) => ok)).toBe(true);
    expect(transport.opens).toBe(1);
    valueOf(await bench.handle('pads.close', { pad: 'pad-1' }));
    valueOf(await bench.handle('pads.open', { pad: 'pad-1' }));
    expect(transport.opens).toBe(2);
    transport.leave();
    expect(valueOf(await bench.handle('pads.list', {}))[0]?.open).toBe(false);
    valueOf(await bench.handle('pads.open', { pad: 'pad-1' }));
    expect(transport.opens).toBe(3);
  });

  it('tells pads apart that cannot be opened', async () => {
    const transport = new ScriptedTransport();
    const problem = { code: 'pad-no-permission', says: 'This account may not open it: write the rule.' };
    transport.refusal = problem;
    const rule = { file: '/etc/udev/rules.d/70-x.rules', text: 'KERNEL', then: 'replug' };
    const { bench } = await makeBench({
      watcher: {
        start: (hear) => hear([{ ...sourceOf(transport, problem), rule }]),
        pause: () => undefined,
        resume: () => undefined,
        close: () => Promise.resolve(),
      },
    });
    expect(valueOf(await bench.handle('pads.list', {}))[0]).toMatchObject({ open: false, problem, rule });
    expect(await bench.handle('pads.open', { pad: 'pad-1' })).toEqual({ ok: false, problem });
    expect(await bench.handle('demo.hand', { pad: 'pad-1', stick: 'left', does: 'circle' })).toMatchObject({
      ok: false,
      problem: { code: 'pad-not-simulated' },
    });
    expect(await bench.handle('pads.open', { pad: 'pad-2' })).toMatchObject({
      ok: false,
      problem: { code: 'pad-gone' },
    });
  });

  it('opens a kept survey again after a restart, from measures worked out once', async () => {
    const test = await makeBench();
    const survey = await surveyed(test);
    const first = valueOf(await test.bench.handle('surveys.open', { survey }));
    const kept = path.join(test.folder, 'surveys', survey, 'measured.json');
    const before = await stat(kept);
    await test.bench.close();

    const { bench } = await makeBench({ folder: test.folder });
    expect(valueOf(await bench.handle('surveys.list', {}))).toEqual([
      expect.objectContaining({ survey, finished: true }),
    ]);
    expect(valueOf(await bench.handle('surveys.open', { survey }))).toEqual(first);
    expect((await stat(kept)).mtimeMs).toBe(before.mtimeMs);
    await writeFile(kept, 'not json');
    expect(valueOf(await bench.handle('surveys.open', { survey }))).toEqual(first);
    expect((await readdir(path.dirname(kept))).filter((name) => name.includes('set-aside'))).toHaveLength(1);
  });

  it('proposes a mapping for a kept survey, or says why not', async () => {
    const test = await makeBench();
    const survey = await surveyed(test);
    const wish = { aim: 'full-reach', centreBy: 'steadiest', guard: 0.01 } as const;
    const proposal = valueOf(await test.bench.handle('surveys.propose', { survey, stick: 'left', wish }));
    expect(proposal).toMatchObject({ aim: 'full-reach', centreBy: 'steadiest' });
    for (const { min, centre, max } of [proposal.mapping.x, proposal.mapping.y]) {
      expect(Number.isInteger(min) && Number.isInteger(centre) && Number.isInteger(max)).toBe(true);
      expect(min).toBeLessThan(centre);
      expect(centre).toBeLessThan(max);
    }
    expect(proposal.reasons.map(({ of }) => of)).toContain('x.max');
    const other = await test.bench.handle('surveys.propose', { survey, stick: 'right', wish });
    expect(other).toMatchObject({ ok: false, problem: { says: expect.stringMatching(/\.$/u) as string } });
  });

  it('keeps to the contract in everything that it answers and tells', { timeout: 60_000 }, async () => {
    const test = await makeBench();
    const faults: unknown[] = [];
    const router = createRouter(test.bench, (problem) => faults.push(problem));
    const told = new Set<string>();
    router.events((name) => told.add(name));
    const survey = await surveyed(test);
    await test.pass(1500);
    const answers = await Promise.all([
      router.answer('surveys.open', { survey }),
      router.answer('surveys.list', {}),
      router.answer('surveys.export', { survey, from: 0 }),
      router.answer('settings.write', { sound: false }),
      router.answer('settings.read', {}),
    ]);
    expect(answers.filter(({ ok }) => !ok)).toEqual([]);
    await test.until(() => told.has('surveys.changed'));
    expect([...told].toSorted()).toEqual([
      'pad.health',
      'pads.changed',
      'settings.changed',
      'survey.state',
      'surveys.changed',
    ]);
    expect(faults).toEqual([]);
  });

  it('takes a log in and tells that there is one more', async () => {
    const test = await makeBench();
    const lists: number[] = [];
    test.bench.listen('surveys.changed', (surveys) => lists.push(surveys.length));
    const piece = Buffer.from(smallLog()).toString('base64');
    const taken = valueOf(
      await test.bench.handle('surveys.import', { upload: 'u', name: 'a.padlog', piece, last: true }),
    );
    expect(taken.survey).toMatchObject({ name: 'a', product: 'Test pad', simulated: false });
    await expect.poll(() => lists).toEqual([1]);
    const details = valueOf(await test.bench.handle('surveys.open', { survey: taken.survey?.survey ?? '' }));
    expect(details).toMatchObject({ mappingFrom: 'range', log: { reports: 50 } });
    const lacks = details.sticks.left?.evidence.lacks ?? [];
    expect(lacks.length).toBeGreaterThan(0);
    for (const { says } of lacks) expect(says).toMatch(/\.$/u);
  });

  it('takes in a log with a line that is no JSON, and says which is left out, on import as after a restart', async () => {
    const test = await makeBench();
    const lines = smallLog().split('\n');
    lines[20] = (lines[20] ?? '').slice(0, 6);
    const piece = Buffer.from(lines.join('\n')).toString('base64');
    const taken = valueOf(await test.bench.handle('surveys.import', { upload: 'u', name: 'a', piece, last: true }));
    const survey = taken.survey?.survey ?? '';
    const again = await makeBench({ folder: test.folder });
    for (const { bench } of [test, again]) {
      const details = valueOf(await bench.handle('surveys.open', { survey }));
      expect(details.log).toMatchObject({ reports: 49, damaged: 1 });
      const says = details.sticks.left?.evidence.lacks?.find(({ code }) => code === 'log-damaged')?.says;
      expect(says).toMatch(/^1 line of the log is damaged and left out, the first is line 21: /u);
    }
  });

  it('refuses a log that goes back in time, with the line', async () => {
    const test = await makeBench();
    const piece = Buffer.from(`${smallLog()}["r",3,0,"8080"]\n`).toString('base64');
    const taken = await test.bench.handle('surveys.import', { upload: 'u', name: 'a', piece, last: true });
    expect(taken).toMatchObject({ ok: false, problem: { code: 'log-time', at: 52 } });
    expect(valueOf(await test.bench.handle('surveys.list', {}))).toEqual([]);
  });

  it('answers for surveys that are not there, whatever they are called', async () => {
    const { bench } = await makeBench();
    for (const survey of ['..', '../../etc', 'none']) {
      expect(await bench.handle('surveys.open', { survey })).toMatchObject({ ok: false });
      expect(await bench.handle('surveys.export', { survey, from: 0 })).toMatchObject({ ok: false });
    }
  });

  it('keeps settings where it was told to', async () => {
    const { bench } = await makeBench();
    const heard: unknown[] = [];
    bench.listen('settings.changed', (settings) => heard.push(settings.theme));
    expect(valueOf(await bench.handle('settings.write', { theme: 'dark' })).theme).toBe('dark');
    expect(valueOf(await bench.handle('settings.read', {})).theme).toBe('dark');
    expect(heard).toEqual(['dark']);
  });

  it('gives the lock of a pad free when the log cannot be made', async () => {
    const steps: string[] = [];
    const transport = new ScriptedTransport();
    const test = await makeBench({
      watcher: {
        start: (hear) => hear([sourceOf(transport)]),
        pause: () => steps.push('pause'),
        resume: () => steps.push('resume'),
        close: () => Promise.resolve(),
      },
      lock: {
        take: () => {
          steps.push('taken');
          return Promise.resolve(done(() => Promise.resolve(void steps.push('free'))));
        },
      },
    });
    await writeFile(path.join(test.folder, 'surveys'), 'in the way');
    const pad = await openFirst(test);
    const started = await test.bench.handle('survey.start', surveyOf(pad));
    expect(started.ok).toBe(false);
    expect(steps).toEqual(['taken', 'free']);
  });
});
