/** What can be done about a write that broke off, and what must not be done to other pads and other writes on the way. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { memoryEnd } from '../../../../core/image/differing-bytes.ts';
import { faultImage, faultMap, FIRST_BLOCK, fromPad, victim } from '../../../support/fault-pad.ts';
import {
  begin,
  breakOff,
  faultBench,
  openJournals,
  planned,
  read,
  show,
  write,
  type FaultBench,
  type MemoryState,
} from '../fault-bench.ts';
import { valueOf } from '../make-bench.ts';

const isAsBefore = (image: Uint8Array): boolean =>
  memoryEnd({ now: image, unknown: [] }, faultImage(), faultImage(), faultMap) === 'before';

async function userLayer({ made }: FaultBench, image: string | null) {
  const opened = valueOf(await made.bench.handle('images.open', { image: image ?? '', map: faultMap.id }));
  return opened.layers.find(({ layer }) => layer === 'user');
}

describe('a write that broke off', () => {
  it('is told with the pad, and nothing else is written before it is put right', async () => {
    const bench = await faultBench();
    const { made } = bench;
    const pad = await breakOff(bench);
    const [journal = ''] = await openJournals(bench);
    const about = valueOf(await made.bench.handle('memory.about', { pad }));
    expect(about.journal).toMatchObject({ journal, pad, restores: false });
    const { image } = await read(bench, pad);
    const wish = {
      store: {
        layer: 'factory' as const,
        mappings: { left: { x: { min: 500, centre: 2000, max: 3500 }, y: { min: 500, centre: 2000, max: 3500 } } },
        from: fromPad('fault-1'),
      },
    };
    const { plan } = valueOf(await made.bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish }));
    const refused = await made.bench.handle('memory.preview', { pad, wish: { plan } });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'journal-open' } });
    for (const blind of [{ restore: journal }, { finish: journal }])
      expect(await made.bench.handle('memory.preview', { pad, wish: blind })).toMatchObject({
        problem: { code: 'journal-not-shown' },
      });
  });

  it('is finished: the numbers that were wanted stand in a valid layer', async () => {
    const bench = await faultBench();
    const pad = await breakOff(bench);
    const [journal = ''] = await openJournals(bench);
    expect(await show(bench, pad, journal)).toMatchObject({ end: 'differs' });
    const end = await write(bench, pad, { finish: journal });
    expect(end).toMatchObject({ doing: 'finish', end: 'after', problem: null });
    expect(await userLayer(bench, end.image)).toMatchObject({ marker: 'valid' });
    expect(await openJournals(bench)).toEqual([]);
    expect(await readdir(path.join(bench.made.folder, 'journals', 'over'))).toHaveLength(2);
  });

  it('is finished as a whole where somebody else changed a byte meanwhile, and that is shown', async () => {
    const bench = await faultBench();
    const pad = await breakOff(bench);
    bench.pad.image[victim.elsewhere] = (bench.pad.image[victim.elsewhere] ?? 0) ^ 0x55;
    const [journal = ''] = await openJournals(bench);
    const shown = await show(bench, pad, journal);
    expect(shown.bytes.some(({ offset }) => offset === victim.elsewhere)).toBe(true);
    const preview = valueOf(await bench.made.bench.handle('memory.preview', { pad, wish: { finish: journal } }));
    expect(preview.changes.some(({ offset }) => offset === victim.elsewhere)).toBe(true);
    expect(await write(bench, pad, { finish: journal })).toMatchObject({ end: 'after', problem: null });
    expect(await openJournals(bench)).toEqual([]);
  });

  it.each(['restore', 'finish'] as const)(
    'stays open wherever its %s breaks off too, and is put right then',
    async (doing) => {
      const target = { restore: 'before', finish: 'after' }[doing];
      const ends = new Set<string>();
      for (let k = 0; k <= FIRST_BLOCK + 12; k += k < FIRST_BLOCK - 1 ? 8 : 1) {
        const bench = await faultBench();
        const handle = await breakOff(bench);
        const [first = ''] = await openJournals(bench);
        await show(bench, handle, first);
        bench.pad.arm({ kind: 'unplugged after', k });
        const broken = await write(bench, handle, doing === 'restore' ? { restore: first } : { finish: first });
        expect(broken).toMatchObject({ doing, problem: { code: 'pad-gone' } });
        ends.add(broken.end ?? '');
        bench.pad.mend();
        await bench.open(bench.pad);
        const open = await openJournals(bench);
        expect(open).toHaveLength(1);
        const [second = ''] = open;
        const shown = await show(bench, handle, second);
        if (shown.end === 'differs') {
          const again = doing === 'restore' ? { restore: second } : { finish: second };
          expect(await write(bench, handle, again)).toMatchObject({ end: target, problem: null });
        } else expect(shown.end).toBe(target);
        expect(isAsBefore(bench.pad.image)).toBe(doing === 'restore');
        expect(await openJournals(bench)).toEqual([]);
        await bench.made.bench.close();
      }
      expect([...ends].toSorted()).toEqual([target, 'differs'].toSorted());
    },
  );
});

describe('a write that is ended on request', () => {
  it('is rolled back whole however often that is asked', async () => {
    const bench = await faultBench();
    const { made, handle, pad } = bench;
    await begin(bench, handle, await planned(bench, handle));
    await bench.until(() => pad.world.firstWrite.command > 0);
    // With every step from the first block on.
    let last: MemoryState | null = null;
    made.bench.listen('memory.state', (state) => (last = state));
    await bench.until(() => {
      void made.bench.handle('memory.abort', { pad: handle });
      return last?.end != null;
    });
    expect(last).toMatchObject({ end: 'before', problem: { code: 'memory-aborted' } });
    expect(isAsBefore(pad.image)).toBe(true);
    expect(await openJournals(bench)).toEqual([]);
  });

  it.each(['the program ends', 'the pad is closed', 'the machine goes to sleep'] as const)(
    'is rolled back before %s',
    async (why) => {
      const bench = await faultBench();
      const { made, handle, pad } = bench;
      const { bench: service } = made;
      await begin(bench, handle, await planned(bench, handle));
      await bench.until(() => pad.world.firstWrite.command > 0);
      expect(isAsBefore(pad.image)).toBe(false);
      let isOver = false;
      const closing =
        why === 'the program ends'
          ? service.close()
          : why === 'the pad is closed'
            ? service.handle('pads.close', { pad: handle })
            : service.suspend();
      void closing.then(() => (isOver = true));
      await bench.until(() => isOver);
      expect(isAsBefore(pad.image)).toBe(true);
      expect(await openJournals(bench)).toEqual([]);
      expect(await readdir(path.join(made.folder, 'journals', 'over'))).toHaveLength(1);
    },
  );
});
