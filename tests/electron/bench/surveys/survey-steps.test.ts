import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { VirtualClock } from '../../../../electron/bench/time/virtual-clock.ts';
import { SimulatedTransport } from '../../../../electron/transport/simulated-transport.ts';
import { createDemoPlug } from '../../../../electron/transport/plug-demo.ts';
import type { SimulatedHand } from '../../../../core/simulate/simulated-hand.ts';
import type { Request } from '../../../../shared/contract.ts';
import { demoNames, type DemoName } from '../../../../core/simulate/demos.ts';
import { readLog } from '../../../support/read-log.ts';
import { follow, makeBench, surveyOf, valueOf, type TestBench } from '../make-bench.ts';

const MINUTES = 120_000;

async function surveyed(
  demo: DemoName,
  request: Partial<Request<'survey.start'>>,
): Promise<TestBench & { survey: string; marks: string[] }> {
  const test = await makeBench();
  const { pad } = valueOf(await test.bench.handle('pads.plugDemo', { name: demo }));
  valueOf(await test.bench.handle('pads.open', { pad }));
  await follow(test, pad);
  await test.pass(100);
  const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad, { releases: 1, ...request })));
  await test.until(() => ['done', 'aborted', 'failed'].includes(test.states.at(-1)?.step ?? ''));
  const { entries } = await readLog(path.join(test.folder, 'surveys', survey, 'log.padlog'));
  const marks = entries.filter((entry) => entry.startsWith('mark')).map((entry) => entry.replace(/^mark \d+ /u, ''));
  return { ...test, survey, marks };
}

const last = (test: TestBench) => test.states.at(-1);

describe('the steps of a survey', () => {
  it('takes sweeps and flicks from a hand that follows, and marks them', { timeout: MINUTES }, async () => {
    const test = await surveyed('healthy', { steps: ['travel', 'flick', 'rest'], sweeps: 2, flicks: 2 });
    expect(last(test)).toMatchObject({
      step: 'done',
      captures: [
        { purpose: 'rest', state: 'taken' },
        { purpose: 'travel', state: 'taken' },
        { purpose: 'flick', state: 'taken' },
      ],
    });
    const from = test.marks.indexOf('capture {"stick":"left","purpose":"travel","edge":"begin"}');
    const to = test.marks.indexOf('capture {"stick":"left","purpose":"travel","edge":"end"}');
    expect(test.marks.slice(from + 1, to)).toEqual(
      [0, 90, 180, 270, 0, 90, 180, 270].map((angle) => `toward {"stick":"left","angle":${angle}}`),
    );
    expect(test.marks.slice(to + 1)).toEqual([
      'capture {"stick":"left","purpose":"flick","edge":"begin"}',
      ...Array<string>(8).fill('release {"stick":"left"}'),
      'capture {"stick":"left","purpose":"flick","edge":"end"}',
      'end {}',
    ]);
    const sweeping = test.states.filter(({ sweeps }) => sweeps.along !== null);
    expect(Math.min(...sweeping.map(({ sweeps }) => sweeps.along ?? 0))).toBeLessThan(-0.9);
    expect(Math.max(...sweeping.map(({ sweeps }) => sweeps.along ?? 0))).toBeGreaterThan(0.8);
  });

  it('ends for every simulated pad, whatever is wrong with it', { timeout: 5 * MINUTES }, async () => {
    for (const demo of demoNames) {
      const steps = ['travel', 'flick', 'inputs'] as const;
      const test = await surveyed(demo, { steps: [...steps], sweeps: 1, flicks: 1 });
      expect(`${demo} ${last(test)?.step ?? ''}`).toBe(`${demo} done`);
      expect(test.clock.micros()).toBeLessThan(600e6);
      expect(last(test)?.captures.map(({ state }) => state)).toEqual(['taken', 'taken', 'taken']);
    }
  });

  it('takes the inputs once for the pad, hands-free, and shows what is missing until then', async () => {
    const test = await surveyed('healthy', { steps: ['inputs'], sticks: [] });
    expect(last(test)).toMatchObject({
      step: 'done',
      captures: [{ stick: null, purpose: 'inputs', of: null, state: 'taken' }],
    });
    expect(test.marks.filter((mark) => mark.startsWith('capture'))).toEqual([
      'capture {"stick":null,"purpose":"inputs","edge":"begin"}',
      'capture {"stick":null,"purpose":"inputs","edge":"end"}',
    ]);
    const shown = test.states.filter(({ inputs }) => inputs !== null);
    const missing = shown.map(({ inputs }) => inputs?.filter((row) => row.missing !== null).length ?? 0);
    expect(missing[0]).toBe(26);
    expect(missing.at(-1)).toBeLessThan(3);
    expect(shown.at(-1)?.inputs?.find(({ says }) => says === 'left trigger')).toMatchObject({
      field: { minimum: 0, maximum: 255 },
      extent: { least: 0, greatest: 255 },
    });
  });

  it('takes a press of the confirm button for one of the inputs, and ends only where it is held', async () => {
    const clock = new VirtualClock(new Date('2024-05-01T10:00:00Z'));
    const plug = createDemoPlug(clock, 1);
    const hands: SimulatedHand[] = [];
    const test = await makeBench({
      clock,
      plugDemo: (name, key) => {
        const source = plug(name, key);
        if (source.ok && source.value.hand !== null) hands.push(source.value.hand);
        return source;
      },
    });
    const pass = async (millis: number): Promise<void> => {
      const end = clock.micros() + 1000 * millis;
      await clock.run(() => clock.micros() >= end);
    };
    const [{ pad } = { pad: '' }] = valueOf(await test.bench.handle('pads.list', {}));
    valueOf(await test.bench.handle('pads.open', { pad }));
    await pass(50);
    const request = surveyOf(pad, { steps: ['inputs'], sticks: [], confirmButton: 4 });
    valueOf(await test.bench.handle('survey.start', request));
    expect(last(test)?.prompt).toContain('hold button 4 for two seconds to end without what is missing');
    const press = async (millis: number): Promise<void> => {
      hands[0]?.press(4, millis);
      await pass(millis + 200);
    };
    await press(100);
    expect(last(test)?.step).toBe('inputs');
    await press(100);
    await press(1500);
    expect(last(test)?.step).toBe('inputs');
    expect(last(test)?.inputs?.find(({ says }) => says === 'button 4')?.missing).toBeNull();
    await press(2500);
    await clock.run(() => last(test)?.step === 'done');
    expect(last(test)).toMatchObject({ step: 'done', captures: [{ state: 'taken' }] });
    expect(last(test)?.inputs?.filter(({ missing }) => missing !== null)).toHaveLength(25);
  });

  it('keeps the sweeps that were taken when the pad vanishes amid one', async () => {
    const clock = new VirtualClock(new Date('2024-05-01T10:00:00Z'));
    const plug = createDemoPlug(clock, 1);
    const transports: unknown[] = [];
    const test = await makeBench({
      clock,
      plugDemo: (name, key) => {
        const source = plug(name, key);
        if (source.ok) transports.push(source.value.transport);
        return source;
      },
    });
    const [{ pad } = { pad: '' }] = valueOf(await test.bench.handle('pads.list', {}));
    valueOf(await test.bench.handle('pads.open', { pad }));
    await follow(test, pad);
    const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad, { steps: ['travel'] })));
    await clock.run(() => last(test)?.sweeps.taken.length === 2 && last(test)?.phase === 'sweeping');
    const [transport] = transports;
    if (transport instanceof SimulatedTransport) transport.unplug();
    await clock.run(() => last(test)?.step === 'failed');
    expect(last(test)).toMatchObject({ step: 'failed', problem: { code: 'pad-gone' }, captures: [{ state: 'open' }] });
    const { entries, cut } = await readLog(path.join(test.folder, 'surveys', survey, 'log.padlog'));
    expect(cut).toBe(false);
    expect(entries.filter((entry) => entry.includes(' toward '))).toHaveLength(3);
    expect(entries.at(-2)).toContain('capture {"stick":"left","purpose":"travel","edge":"end"}');
    expect(entries.at(-1)).toMatch(/^mark \d+ end /u);
  });

  it('gives a capture up by itself where a hand that follows cannot do it', async () => {
    const one = await makeBench();
    const { pad } = valueOf(await one.bench.handle('pads.plugDemo', { name: 'healthy' }));
    valueOf(await one.bench.handle('pads.open', { pad }));
    valueOf(await one.bench.handle('demo.hand', { pad, stick: 'left', does: 'follow' }));
    valueOf(await one.bench.handle('survey.start', surveyOf(pad, { steps: ['travel'] })));
    await one.until(() => last(one)?.step === 'travel');
    // Somebody holds the stick: nothing the hand was asked for comes.
    for (let second = 0; second < 90 && last(one)?.step === 'travel'; second += 1) {
      valueOf(await one.bench.handle('demo.hand', { pad, stick: 'left', does: 'circle' }));
      valueOf(await one.bench.handle('demo.hand', { pad, stick: 'left', does: 'follow' }));
      await one.pass(200);
    }
    await one.until(() => last(one)?.step === 'done');
    expect(one.clock.micros()).toBeLessThan(200e6);
  });

  it('takes dwells under each disturbance, and says of which in the mark', { timeout: MINUTES }, async () => {
    const test = await surveyed('healthy', {
      steps: ['disturbance'],
      disturbances: ['rumble', 'other-stick', 'click', 'charger', 'shell'],
    });
    expect(last(test)?.captures.map(({ of, state }) => `${of ?? ''} ${state}`)).toEqual([
      'rumble taken',
      'other-stick taken',
      'click taken',
      'charger taken',
      'shell taken',
    ]);
    expect(test.marks).toContain('capture {"stick":"left","purpose":"disturbance","of":"click","edge":"begin"}');
    expect(test.marks.filter((mark) => mark.startsWith('dwell') && mark.includes('end'))).toHaveLength(30);
  });

  it('waits in a warm-up until the rest no longer drifts, with a mark of its own', { timeout: MINUTES }, async () => {
    const test = await surveyed('healthy', { steps: ['warmUp'] });
    expect(last(test)).toMatchObject({ step: 'done', captures: [{ purpose: 'warmUp', state: 'taken' }] });
    expect(test.marks.filter((mark) => mark.startsWith('warmUp') || mark.startsWith('capture'))).toEqual([
      'warmUp {"stick":"left","edge":"begin"}',
      'warmUp {"stick":"left","edge":"end"}',
    ]);
    expect(test.states.some(({ prompt }) => prompt.startsWith('Wait'))).toBe(true);
    expect(test.states.findLast(({ warmUp }) => warmUp !== null)?.warmUp?.dwells).toBeGreaterThanOrEqual(7);
  });
});
