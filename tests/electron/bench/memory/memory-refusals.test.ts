/** What keeps a memory session from a pad: a low battery, another session, another program, a pad that only looks the same. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { createPadLock } from '../../../../electron/store/pad-lock.ts';
import { faultImage, faultMap } from '../../../support/fault-pad.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { begin, breakOff, faultBench, openJournals, planned, read, show, write } from '../fault-bench.ts';
import { surveyOf, valueOf } from '../make-bench.ts';

describe('a low battery', () => {
  it('is no reason not to read, but nothing is written', async () => {
    const bench = await faultBench();
    const { handle, pad, made } = bench;
    pad.world.memory.battery = 19;
    const wish = await planned(bench, handle);
    const end = await write(bench, handle, wish);
    expect(end).toMatchObject({ end: 'before', problem: { code: 'memory-battery' } });
    expect(end.problem?.says).toContain('19 %');
    expect(await openJournals(bench)).toEqual([]);
    expect(await readdir(path.join(made.folder, 'journals')).catch(() => [])).toEqual([]);
    const images = valueOf(await made.bench.handle('images.list', {}));
    expect(images.flatMap(({ kept }) => kept).map(({ why }) => why)).not.toContain('after a write');
    pad.world.memory.battery = 20;
    expect(await write(bench, handle, await planned(bench, handle))).toMatchObject({ end: 'after' });
  });

  it('keeps a broken write open until it is charged', async () => {
    const bench = await faultBench();
    const handle = await breakOff(bench);
    const [journal = ''] = await openJournals(bench);
    await show(bench, handle, journal);
    bench.pad.world.memory.battery = 5;
    expect(await write(bench, handle, { restore: journal })).toMatchObject({
      end: 'differs',
      problem: { code: 'memory-battery' },
    });
    expect(await openJournals(bench)).toEqual([journal]);
  });
});

describe('a pad whose memory is in use', () => {
  it('is refused to a second program on the same data folder, and free again afterwards', async () => {
    const folder = await temporaryFolder();
    const lock = createPadLock(path.join(folder, 'locks'));
    const first = await faultBench({ folder, lock });
    const second = await faultBench({ folder, lock });
    const wish = await planned(first, first.handle);
    const other = await planned(second, second.handle);
    await begin(first, first.handle, wish);
    const { bench } = second.made;
    const { token } = valueOf(await bench.handle('memory.preview', { pad: second.handle, wish: other }));
    const busy = { ok: false, problem: { code: 'pad-busy' } };
    expect(await bench.handle('memory.write', { pad: second.handle, token })).toMatchObject(busy);
    expect(await bench.handle('memory.read', { pad: second.handle })).toMatchObject(busy);
    const survey = surveyOf(second.handle, { steps: ['rest'] });
    expect(await bench.handle('survey.start', survey)).toMatchObject({ ok: false });
    expect(second.pad.commands).toBe(44 + 1);
    expect(await first.ended(first.handle)).toMatchObject({ end: 'after' });
    expect(await read(second, second.handle)).toMatchObject({ end: 'read' });
  });

  it('takes one of two sessions that are begun at the same moment', async () => {
    const bench = await faultBench();
    const { made, handle } = bench;
    const both = await Promise.all([1, 2].map(() => made.bench.handle('memory.read', { pad: handle })));
    expect(both.map((one) => (one.ok ? 'begun' : one.problem.code)).toSorted()).toEqual(['begun', 'memory-underway']);
    expect(await bench.ended(handle)).toMatchObject({ end: 'read', problem: null });
  });
});

describe('two pads of one kind without a serial number', () => {
  const twins = () =>
    faultBench({
      pads: [1, 2].map((seed) => ({ image: faultImage(), serial: null, key: `twin-${seed}`, seed })),
    });

  it('are switched on for writing each by itself, and only until they leave', async () => {
    const bench = await twins();
    const [one, other] = bench.pads as [typeof bench.pad, typeof bench.pad];
    const { made, handle } = bench;
    const second = await bench.open(other);
    const isOn = async (pad: string) => valueOf(await made.bench.handle('memory.about', { pad })).writing;
    valueOf(await made.bench.handle('memory.allow', { pad: handle, writing: true }));
    expect([await isOn(handle), await isOn(second)]).toEqual([true, false]);
    one.leave();
    one.mend();
    expect(await isOn(await bench.open(one))).toBe(false);
    expect(await readdir(made.folder)).not.toContain('writable-pads.json');
  });

  it('keep their broken writes apart by what their memory protocol tells of them', async () => {
    const bench = await twins();
    const [one, other] = bench.pads as [typeof bench.pad, typeof bench.pad];
    const first = await breakOff(bench, one);
    const [journal = ''] = await openJournals(bench);
    const second = await bench.open(other);
    expect(await show(bench, second, journal)).toMatchObject({ end: 'failed', problem: { code: 'journal-other-pad' } });
    const written = await write(bench, second, await planned(bench, second));
    expect(written).toMatchObject({ end: 'after', problem: null });
    expect(await openJournals(bench)).toEqual([journal]);
    other.image.set(faultImage());
    await breakOff(bench, other);
    expect(await openJournals(bench)).toHaveLength(2);
    expect(await show(bench, first, journal)).toMatchObject({ end: 'differs' });
    const about = valueOf(await bench.made.bench.handle('memory.about', { pad: first }));
    expect(about.journal?.journal).toBe(journal);
    await bench.made.bench.handle('memory.allow', { pad: first, writing: true });
    expect(await write(bench, first, { restore: journal })).toMatchObject({ end: 'before', problem: null });
    expect(await openJournals(bench)).toHaveLength(1);
  });

  it('get no whole image of one another', async () => {
    const bench = await twins();
    const [, other] = bench.pads as [typeof bench.pad, typeof bench.pad];
    other.image[0x201] = 0x77;
    const { image: target } = await read(bench, bench.handle);
    const { image } = await read(bench, await bench.open(other));
    const wish = { restore: { image: target ?? '', scope: 'whole' as const } };
    const plan = await bench.made.bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish });
    expect(plan).toMatchObject({ ok: false, problem: { code: 'numbers-other-pad' } });
  });
});
