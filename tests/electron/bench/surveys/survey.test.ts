import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { done, failed, type Result } from '../../../../core/result.ts';
import type { PadSource, PlugDemo } from '../../../../electron/bench/pads/pad-source.ts';
import { VirtualClock } from '../../../../electron/bench/time/virtual-clock.ts';
import { createDemoPlug } from '../../../../electron/transport/plug-demo.ts';
import { SimulatedTransport } from '../../../../electron/transport/simulated-transport.ts';
import { failingFiles } from '../../../support/failing-files.ts';
import { readLog } from '../../../support/read-log.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { createPadLock } from '../../../../electron/store/pad-lock.ts';
import { ScriptedTransport, sourceOf } from '../scripted-transport.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from '../make-bench.ts';

const MINUTES = 60_000;

function logOf({ folder }: TestBench, survey: string): string {
  return path.join(folder, 'surveys', survey, 'log.padlog');
}

async function marksOf(test: TestBench, survey: string): Promise<string[]> {
  const { entries } = await readLog(logOf(test, survey));
  return entries.filter((entry) => entry.startsWith('mark')).map((entry) => entry.replace(/^mark \d+ /u, ''));
}

/** A plug whose pads a test can take hold of. */
function heldPlug(): { clock: VirtualClock; plugDemo: PlugDemo; plugged: PadSource[] } {
  const clock = new VirtualClock(new Date('2024-05-01T10:00:00Z'));
  const plugged: PadSource[] = [];
  const plug = createDemoPlug(clock, 1);
  return {
    clock,
    plugged,
    plugDemo(name, key) {
      const source = plug(name, key);
      if (source.ok) plugged.push(source.value);
      return source;
    },
  };
}

/** A bench with a survey under way on its first pad, the hand following. */
async function underway(
  more: Parameters<typeof makeBench>[0] = {},
  request: Parameters<typeof surveyOf>[1] = {},
): Promise<TestBench & { survey: string; pad: string }> {
  const test = await makeBench(more);
  const pad = await openFirst(test);
  await follow(test, pad);
  const state = valueOf(await test.bench.handle('survey.start', surveyOf(pad, request)));
  return { ...test, survey: state.survey, pad };
}

const last = (test: TestBench) => test.states.at(-1);
const isOver = (test: TestBench): boolean => ['done', 'aborted', 'failed'].includes(last(test)?.step ?? '');

describe('a survey on the bench', () => {
  it('takes rest and rim of both sticks from a hand that follows', { timeout: MINUTES }, async () => {
    const test = await underway({}, { sticks: ['left', 'right'], releases: 12, turns: 3 });
    await test.until(() => isOver(test));
    expect(last(test)).toMatchObject({
      step: 'done',
      problem: null,
      current: null,
      captures: [
        { stick: 'left', purpose: 'rest', of: null, state: 'taken' },
        { stick: 'left', purpose: 'rim', of: null, state: 'taken' },
        { stick: 'right', purpose: 'rest', of: null, state: 'taken' },
        { stick: 'right', purpose: 'rim', of: null, state: 'taken' },
      ],
    });
    const details = valueOf(await test.bench.handle('surveys.open', { survey: test.survey }));
    expect(details).toMatchObject({ mappingFrom: 'stored', log: { domain: 'sensor', stage: 'received', lost: null } });
    for (const stick of ['left', 'right'] as const) {
      const { rest, rim, captures } = details.sticks[stick]!.evidence;
      expect(captures).toBe('marked');
      expect(rest?.dwells).toHaveLength(12);
      const ways = rim?.turns.map(({ way }) => way) ?? [];
      expect(ways.filter((way) => way === 'clockwise').length).toBeGreaterThanOrEqual(3);
      expect(ways.filter((way) => way === 'counterClockwise').length).toBeGreaterThanOrEqual(3);
    }
    expect(valueOf(await test.bench.handle('surveys.list', {}))).toEqual([
      expect.objectContaining({ survey: test.survey, finished: true, simulated: true, stage: 'received' }),
    ]);
  });

  it('writes what it took as marks, capture by capture', async () => {
    const test = await underway({}, { releases: 2, turns: 1 });
    await test.until(() => isOver(test));
    const marks = await marksOf(test, test.survey);
    expect(marks[0]).toMatch(/^layers \{"layers":\{"factory":\{"left":\{"x":\{"min":.*"user":null\}\}$/u);
    expect(marks.filter((mark) => mark.startsWith('capture'))).toEqual([
      'capture {"stick":"left","purpose":"rest","edge":"begin"}',
      'capture {"stick":"left","purpose":"rest","edge":"end"}',
      'capture {"stick":"left","purpose":"rim","edge":"begin"}',
      'capture {"stick":"left","purpose":"rim","edge":"end"}',
    ]);
    expect(marks.filter((mark) => mark.startsWith('release'))).toHaveLength(2);
    expect(marks.filter((mark) => mark.startsWith('turn')).length).toBeGreaterThanOrEqual(2);
  });

  it('gives every new prompt a number of its own and tells at most 20 states a second', async () => {
    const test = await underway({}, { releases: 3, turns: 1 });
    await test.until(() => isOver(test));
    for (const [index, state] of test.states.entries()) {
      const before = test.states[index - 1];
      if (before === undefined) continue;
      expect(state.promptNumber).toBeGreaterThanOrEqual(before.promptNumber);
      if (state.prompt !== before.prompt) expect(state.promptNumber).toBeGreaterThan(before.promptNumber);
      else expect(state.promptNumber).toBe(before.promptNumber);
    }
    expect(test.states.length).toBeLessThanOrEqual(2 + (test.clock.micros() / 1e6) * 20);
  });

  it('records every report of the pad, in order', async () => {
    const test = await underway({}, { releases: 1, turns: 1 });
    await test.until(() => isOver(test));
    const { entries, cut } = await readLog(logOf(test, test.survey));
    const times = entries.filter((entry) => entry.startsWith('report')).map((entry) => Number(entry.split(' ')[1]));
    expect(cut).toBe(false);
    // 1,000 a second with some jitter: nowhere is one missing.
    const gaps = times.slice(1).map((time, index) => time - (times[index] ?? 0));
    expect(Math.max(...gaps)).toBeLessThan(1500);
    expect(times.length).toBeGreaterThan(3000);
  });

  it('draws the same survey from the same seed', async () => {
    const logs: string[] = [];
    for (let run = 0; run < 2; run += 1) {
      const test = await underway({}, { releases: 2, turns: 1 });
      await test.until(() => isOver(test));
      logs.push(await readFile(logOf(test, test.survey), 'utf8'));
    }
    expect(logs[1]).toBe(logs[0]);
  });

  it('is run hands-free: a button of the pad confirms each capture', async () => {
    const held = heldPlug();
    const test = await makeBench({ clock: held.clock, plugDemo: held.plugDemo });
    const pass = async (millis: number): Promise<void> => {
      const end = held.clock.micros() + 1000 * millis;
      await held.clock.run(() => held.clock.micros() >= end);
    };
    const pad = await openFirst(test);
    const hand = held.plugged[0]!.hand!;
    await pass(50);
    valueOf(await test.bench.handle('survey.start', surveyOf(pad, { releases: 1, turns: 1, confirmButton: 4 })));
    await pass(2000);
    expect(last(test)).toMatchObject({ step: 'ready', confirmButton: 4 });
    expect(last(test)?.prompt).toContain('Press button 4 to begin.');
    hand.press(3);
    await pass(500);
    expect(last(test)?.step).toBe('ready');
    hand.press(4);
    await pass(500);
    expect(last(test)?.step).toBe('rest');
    hand.pushAndLetGo('left', 0);
    await pass(4000);
    expect(last(test)).toMatchObject({ step: 'ready', rests: [expect.any(Object) as object] });
    hand.press(4);
    await pass(500);
    expect(last(test)?.step).toBe('rim');
  });

  it('drops the last release on “repeat” and asks for it again', async () => {
    const test = await underway({}, { releases: 4, turns: 1 });
    await test.until(() => last(test)?.releases.taken === 2);
    const before = last(test)!.rests;
    const state = valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'repeat' }));
    expect(state.releases).toEqual({ taken: 1, asked: 4 });
    expect(state.rests).toEqual(before.slice(0, 1));
    await test.until(() => isOver(test));
    const details = valueOf(await test.bench.handle('surveys.open', { survey: test.survey }));
    expect(details.sticks.left?.evidence.rest?.dwells).toHaveLength(4);
    expect(await marksOf(test, test.survey)).toContain('repeat {"of":"release","stick":"left"}');
  });

  it('goes on to the next capture on “skip” and keeps what was taken', async () => {
    const test = await underway({}, { releases: 12, turns: 1 });
    await test.until(() => last(test)?.releases.taken === 3);
    valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'skip' }));
    await test.until(() => last(test)?.step === 'rim');
    valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'skip' }));
    await test.until(() => isOver(test));
    expect(last(test)).toMatchObject({ step: 'done', captures: [{ state: 'skipped' }, { state: 'skipped' }] });
    const details = valueOf(await test.bench.handle('surveys.open', { survey: test.survey }));
    expect(details.sticks.left?.evidence.rest?.dwells).toHaveLength(3);
    expect(details.sticks.left?.evidence.rim).toBeNull();
  });

  it('ends on “abort” with what was taken', async () => {
    const test = await underway({}, { releases: 12, turns: 1 });
    await test.until(() => last(test)?.releases.taken === 2);
    const state = valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'abort' }));
    expect(state).toMatchObject({ step: 'aborted', problem: null });
    expect(state.prompt).toContain('what was taken is kept');
    const details = valueOf(await test.bench.handle('surveys.open', { survey: test.survey }));
    expect(details.sticks.left?.evidence.rest?.dwells).toHaveLength(2);
    expect(valueOf(await test.bench.handle('surveys.list', {}))[0]).toMatchObject({ finished: false });
    const again = valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'confirm' }));
    expect(again.step).toBe('aborted');
  });

  it('ends when the pad vanishes, says so and keeps what was taken', async () => {
    const held = heldPlug();
    const test = await underway({ clock: held.clock, plugDemo: held.plugDemo }, { releases: 12, turns: 1 });
    await held.clock.run(() => last(test)?.releases.taken === 2);
    const { transport } = held.plugged[0]!;
    if (transport instanceof SimulatedTransport) transport.unplug();
    await held.clock.run(() => isOver(test));
    expect(last(test)).toMatchObject({ step: 'failed', problem: { code: 'pad-gone' } });
    const details = valueOf(await test.bench.handle('surveys.open', { survey: test.survey }));
    expect(details.sticks.left?.evidence.rest?.dwells).toHaveLength(2);
    expect(valueOf(await test.bench.handle('pads.list', {}))[0]).toMatchObject({ open: false });
  });

  it('ends when the disk is full, says so and keeps a log to its last whole line', async () => {
    const files = failingFiles({ at: 'write', errno: 'ENOSPC', after: 3, takes: 1000 });
    const test = await underway({ files }, { releases: 24, turns: 1 });
    await test.until(() => isOver(test));
    expect(last(test)).toMatchObject({ step: 'failed', problem: { code: 'disk-full' } });
    const { entries, cut } = await readLog(logOf(test, test.survey));
    expect(cut).toBe(false);
    expect(entries.length).toBeGreaterThan(100);
    const start = surveyOf(test.pad);
    expect((await test.bench.handle('survey.start', start)).ok).toBe(false);
  });

  it('records and says that the computer was busy during a capture', async () => {
    let delay = 0;
    const test = await underway({ loopDelay: { take: () => delay, stop: () => undefined } }, { releases: 12 });
    await test.until(() => last(test)?.step === 'rest');
    await test.pass(1100);
    expect(last(test)?.problem).toBeNull();
    delay = 12.34;
    await test.pass(1100);
    expect(last(test)?.problem).toMatchObject({ code: 'loop-delayed' });
    expect(last(test)?.problem?.says).toContain('12.3 ms');
    valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'abort' }));
    expect(await marksOf(test, test.survey)).toContain('loopDelay {"millis":12.3}');
  });

  it('lets nobody look for pads while it runs', async () => {
    const calls: string[] = [];
    const test = await underway({
      watcher: {
        start: (hear) => hear([]),
        pause: () => calls.push('pause'),
        resume: () => calls.push('resume'),
        close: () => Promise.resolve(),
      },
    });
    expect(calls).toEqual(['pause']);
    valueOf(await test.bench.handle('survey.say', { survey: test.survey, what: 'abort' }));
    expect(calls).toEqual(['pause', 'resume']);
  });

  it('ends with what was taken when its pad is closed, the machine sleeps or the bench closes', async () => {
    for (const end of ['pads.close', 'suspend', 'close'] as const) {
      const test = await underway({}, { releases: 12 });
      await test.until(() => last(test)?.releases.taken === 1);
      if (end === 'pads.close') valueOf(await test.bench.handle('pads.close', { pad: test.pad }));
      else await test.bench[end]();
      expect(last(test)?.step).toBe('aborted');
      expect((await readLog(logOf(test, test.survey))).cut).toBe(false);
      expect((await marksOf(test, test.survey)).slice(-2)).toEqual([
        'capture {"stick":"left","purpose":"rest","edge":"end"}',
        'end {}',
      ]);
    }
  });

  it('is refused on a pad that is not open, has no such stick or is surveyed already', async () => {
    const test = await makeBench();
    const [{ pad } = { pad: '' }] = valueOf(await test.bench.handle('pads.list', {}));
    const codeOf = async (request = surveyOf(pad)): Promise<string | null> => {
      const result: Result<unknown> = await test.bench.handle('survey.start', request);
      return result.ok ? null : result.problem.code;
    };
    expect(await codeOf()).toBe('pad-not-open');
    expect(await codeOf(surveyOf('pad-99'))).toBe('pad-not-open');
    await openFirst(test);
    expect(await codeOf()).toBeNull();
    expect(await codeOf()).toBe('survey-underway');
    expect(await test.bench.handle('survey.say', { survey: 'none', what: 'confirm' })).toMatchObject({
      ok: false,
      problem: { code: 'survey-unknown' },
    });
  });

  it('is refused in one sentence while another program has the pad, and leaves nothing behind', async () => {
    const taken: string[] = [];
    const held = heldPlug();
    const lockable: PlugDemo = (name, key) => {
      const source = held.plugDemo(name, key);
      if (source.ok) Object.assign(source.value.transport, { lockKey: '/dev/hidraw7' });
      return source;
    };
    const busy = failed('pad-busy', 'The pad is in use by process 4711; end its capture, then try again.');
    const test = await makeBench({
      clock: held.clock,
      plugDemo: lockable,
      lock: {
        take(_pad, lockKey) {
          taken.push(lockKey);
          return Promise.resolve(taken.length === 1 ? busy : done(() => Promise.resolve(void taken.push('free'))));
        },
      },
    });
    const pad = await openFirst(test);
    expect(await test.bench.handle('survey.start', surveyOf(pad))).toEqual(busy);
    expect(valueOf(await test.bench.handle('surveys.list', {}))).toEqual([]);
    const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad)));
    expect(taken).toEqual(['/dev/hidraw7', '/dev/hidraw7']);
    valueOf(await test.bench.handle('survey.say', { survey, what: 'abort' }));
    expect(taken).toEqual(['/dev/hidraw7', '/dev/hidraw7', 'free']);
  });

  it('is refused on a pad that another bench is taking a survey of, until that one ends', async () => {
    const locks = await temporaryFolder();
    const pads = [new ScriptedTransport('/dev/hidraw3'), new ScriptedTransport('/dev/hidraw3')];
    const benches = await Promise.all(
      pads.map((transport) =>
        makeBench({
          lock: createPadLock(locks),
          watcher: {
            start: (hear) => hear([sourceOf(transport)]),
            pause: () => undefined,
            resume: () => undefined,
            close: () => Promise.resolve(),
          },
        }),
      ),
    );
    const [one, other] = benches as [TestBench, TestBench];
    const pad = await openFirst(one);
    await openFirst(other);
    const first = valueOf(await one.bench.handle('survey.start', surveyOf(pad)));
    const refused = await other.bench.handle('survey.start', surveyOf(pad));
    expect(refused).toMatchObject({
      ok: false,
      problem: { code: 'pad-busy', says: expect.stringMatching(/\.$/u) as string },
    });
    expect(valueOf(await other.bench.handle('surveys.list', {}))).toEqual([]);
    valueOf(await one.bench.handle('survey.say', { survey: first.survey, what: 'abort' }));
    const second = valueOf(await other.bench.handle('survey.start', surveyOf(pad)));
    expect(second.step).toBe('ready');
  });
});
