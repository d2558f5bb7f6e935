/** What is known of writes from one program to the next: every journal, the undoing of one, and whether the memory is as it was shown. */
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { memoryEnd } from '../../../../core/image/differing-bytes.ts';
import type { Reply } from '../../../../shared/contract.ts';
import { faultImage, faultMap, victim } from '../../../support/fault-pad.ts';
import { breakOff, faultBench, planned, read, write, type FaultBench } from '../fault-bench.ts';
import { valueOf } from '../make-bench.ts';

/** The journal of the one write that ended. */
async function onlyEnded({ made }: FaultBench): Promise<Reply<'journals.list'>[number]> {
  const { ended } = valueOf(await made.bench.handle('journals.all', {}));
  const [only, ...others] = ended;
  if (only === undefined || others.length > 0) throw new Error(`${String(ended.length)} writes ended.`);
  return only;
}

/** The plan to undo that write, for the pad as it is read for it. */
async function undoing(bench: FaultBench, handle: string, undo: string) {
  const { image } = await read(bench, handle);
  return bench.made.bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish: { undo } });
}

describe('the journals', () => {
  it('are told in three: of writes that broke off, that ended, and those that cannot be understood', async () => {
    const bench = await faultBench();
    const { made, handle } = bench;
    const wish = await planned(bench, handle);
    const { image: before } = valueOf(await made.bench.handle('memory.about', { pad: handle }));
    expect(await write(bench, handle, wish)).toMatchObject({ end: 'after' });
    const { journal } = await onlyEnded(bench);
    await writeFile(path.join(made.folder, 'journals', 'zz.jsonl'), 'rot\n');
    const all = valueOf(await made.bench.handle('journals.all', {}));
    expect(all).toMatchObject({
      open: [],
      rotted: [{ journal: 'zz', says: expect.stringContaining('at line 1') as string }],
      ended: [{ journal, pad: handle, map: faultMap.id, before }],
    });
  });

  it('are open alone while the end of their write is not known', async () => {
    const bench = await faultBench();
    await breakOff(bench);
    const all = valueOf(await bench.made.bench.handle('journals.all', {}));
    expect(all).toMatchObject({ open: [{ map: faultMap.id }], rotted: [], ended: [] });
  });
});

describe('a write that ended', () => {
  it('is undone by its journal, though nothing else tells whose image stood before', async () => {
    const bench = await faultBench();
    const { made, pad, handle } = bench;
    expect(await write(bench, handle, await planned(bench, handle))).toMatchObject({ end: 'after' });
    const { journal, before } = await onlyEnded(bench);
    const index = path.join(made.folder, 'vault', 'kept.jsonl');
    const lines = (await readFile(index, 'utf8')).trimEnd().split('\n');
    const ownerless = lines.map((line) => {
      const entry = JSON.parse(line) as { sha256: string };
      return JSON.stringify(entry.sha256 === before ? { ...entry, pad: null } : entry);
    });
    await writeFile(index, `${ownerless.join('\n')}\n`);
    const { image } = await read(bench, handle);
    const wish = { restore: { image: before, scope: 'whole' as const } };
    const foreign = await made.bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish });
    expect(foreign).toMatchObject({ ok: false, problem: { code: 'restore-other-pad' } });

    const { plan, asks } = valueOf(await undoing(bench, handle, journal));
    expect(asks.map(({ code }) => code)).not.toContain('unknown-pad');
    expect(await write(bench, handle, { plan })).toMatchObject({ end: 'after', problem: null });
    expect(memoryEnd({ now: pad.image, unknown: [] }, faultImage(), faultImage(), faultMap)).toBe('before');
  });

  it('is undone on no other pad, and not where there is no such write', async () => {
    const bench = await faultBench({
      pads: ['one', 'two'].map((serial) => ({ image: faultImage(), serial, key: serial })),
    });
    await write(bench, bench.handle, await planned(bench, bench.handle));
    const [, other] = bench.pads;
    if (other === undefined) throw new Error('There is no second pad.');
    other.image[victim.elsewhere] = 0x11;
    const handle = await bench.open(other);
    const foreign = await undoing(bench, handle, (await onlyEnded(bench)).journal);
    expect(foreign).toMatchObject({ ok: false, problem: { code: 'journal-other-pad' } });
    const none = await undoing(bench, handle, 'elsewhere');
    expect(none).toMatchObject({ ok: false, problem: { code: 'journal-unknown' } });
  });
});

describe('what is shown before a write', () => {
  it('tells a memory from one that changed, but not by what changes by itself', async () => {
    const bench = await faultBench();
    const { made, pad, handle } = bench;
    const about = async () => valueOf(await made.bench.handle('memory.about', { pad: handle }));
    expect(await about()).toMatchObject({ image: null, map: null });
    const shown = async (): Promise<string> => {
      const wish = await planned(bench, handle);
      return valueOf(await made.bench.handle('memory.preview', { pad: handle, wish })).memory;
    };
    const first = await shown();
    expect(await about()).toMatchObject({ map: faultMap.id });
    const { image } = await about();
    pad.image[0x3f2] = 0x77;
    expect(await shown()).toBe(first);
    expect((await about()).image).not.toBe(image);
    pad.image[victim.elsewhere] = 0x11;
    expect(await shown()).not.toBe(first);
  });
});
