/** A pad that turns out to be another program's: whoever worked with it stops at once, keeps what there is and says why. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { done, type Problem } from '../../../core/result.ts';
import type { PadLock } from '../../../electron/bench/pads/pad-lock-port.ts';
import { VirtualClock } from '../../../electron/bench/time/virtual-clock.ts';
import { createDemoPlug } from '../../../electron/transport/plug-demo.ts';
import { readLog } from '../../support/read-log.ts';
import { begin, faultBench, openJournals, planned } from './fault-bench.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf } from './make-bench.ts';

const problem: Problem = { code: 'pad-lost-lock', says: 'Some pad was taken over by another program.' };

/** A lock that is always had, and lost when a test says so. */
class LosableLock implements PadLock {
  freed = 0;
  lose: (problem: Problem) => void = () => undefined;

  take(...[, , lost]: Parameters<PadLock['take']>): ReturnType<PadLock['take']> {
    this.lose = lost;
    return Promise.resolve(done(() => Promise.resolve(void (this.freed += 1))));
  }
}

describe('a lock that is lost', () => {
  it('ends the survey with what was taken, and says why', async () => {
    const clock = new VirtualClock(new Date('2024-05-01T10:00:00Z'));
    const plug = createDemoPlug(clock, 1);
    const lock = new LosableLock();
    const test = await makeBench({
      clock,
      lock,
      plugDemo(name, key) {
        const source = plug(name, key);
        if (source.ok) Object.assign(source.value.transport, { lockKey: '/dev/hidraw7' });
        return source;
      },
    });
    const pad = await openFirst(test);
    await follow(test, pad);
    const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad)));
    await clock.run(() => test.states.at(-1)?.step === 'rest' && test.states.at(-1)?.rests.length !== 0);
    lock.lose(problem);
    await clock.run(() => test.states.at(-1)?.step === 'failed');
    expect(test.states.at(-1)).toMatchObject({ step: 'failed', problem });
    const { entries, cut } = await readLog(path.join(test.folder, 'surveys', survey, 'log.padlog'));
    expect(cut).toBe(false);
    expect(entries.at(-2)).toContain('capture {"stick":"left","purpose":"rest","edge":"end"}');
    expect(entries.at(-1)).toMatch(/^mark \d+ end /u);
    expect(lock.freed).toBe(1);
    expect(valueOf(await test.bench.handle('surveys.list', {})).map((one) => one.survey)).toEqual([survey]);
  });

  it('stops a memory session before its next command to the pad, with the journal open and the reason said', async () => {
    const lock = new LosableLock();
    const bench = await faultBench({ lock });
    const { handle, pad } = bench;
    const wish = await planned(bench, handle);
    let isWriting = false;
    bench.made.bench.listen('memory.state', (state) => (isWriting = state.writing));
    await begin(bench, handle, wish);
    await bench.until(() => isWriting);
    const before = pad.commands;
    lock.lose(problem);
    const end = await bench.ended(handle);
    expect(end).toMatchObject({ end: 'differs', problem });
    expect(pad.commands).toBe(before);
    expect(await openJournals(bench)).toHaveLength(1);
    expect(lock.freed).toBe(2);
  });

  it('stops a reading in the same way', async () => {
    const lock = new LosableLock();
    const bench = await faultBench({ lock });
    valueOf(await bench.made.bench.handle('memory.read', { pad: bench.handle }));
    await bench.until(() => bench.pad.commands > 3);
    const before = bench.pad.commands;
    lock.lose(problem);
    expect(await bench.ended(bench.handle)).toMatchObject({ end: 'failed', problem });
    expect(bench.pad.commands).toBe(before);
  });
});
