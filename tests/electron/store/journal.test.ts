import { appendFile, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { JournalStore, type JournalHead } from '../../../electron/store/journal.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const now = (): Date => new Date('2026-11-25T12:00:00Z');
const head: JournalHead = {
  kind: 'stickwright-memory-journal',
  version: 1,
  program: '0.0.0',
  at: now().toISOString(),
  pad: { vendorId: 1, productId: 2, product: 'Pad', serial: 'a', transport: 'usb', unit: '0011' },
  protocol: 'p',
  map: (bundledMaps as [MemoryMap])[0],
  before: '0'.repeat(64),
  after: '1'.repeat(64),
  changes: [{ offset: 1, old: '00', new: '01', means: 'a byte' }],
  origin: null,
};

async function begun(): Promise<{ store: JournalStore; file: string }> {
  const folder = await temporaryFolder();
  const store = new JournalStore(folder, now);
  expect((await store.begin('one', head)).ok).toBe(true);
  expect((await store.append('one', { step: 'write', offset: 1, bytes: 1 })).ok).toBe(true);
  return { store, file: path.join(folder, 'one.jsonl') };
}

describe('the journal of a write', () => {
  it('is found open with its steps, and no more once it is over', async () => {
    const { store } = await begun();
    const { journals, rotted } = await store.open();
    expect(rotted).toEqual([]);
    expect(journals[0]?.head).toEqual(head);
    expect(journals[0]?.steps.map(({ step }) => step)).toEqual(['write']);
    await store.append('one', { step: 'end', end: 'before' });
    await store.close('one');
    expect((await store.open()).journals).toEqual([]);
    expect((await store.over())[0]?.steps.at(-1)).toMatchObject({ step: 'end', end: 'before' });
  });

  it('of an older program is read: the unit stood beside the pad', async () => {
    const { store, file } = await begun();
    const { unit, ...pad } = head.pad;
    await writeFile(file, `${JSON.stringify({ ...head, pad, unit })}\n`);
    expect((await store.open()).journals[0]?.head).toEqual(head);
  });

  it('passes over a last line that was cut off, and goes on in its place', async () => {
    const { store, file } = await begun();
    await appendFile(file, '{"at":"2026');
    expect((await store.open()).journals[0]?.steps).toHaveLength(1);
    await store.append('one', { step: 'end', end: 'after' });
    expect((await store.open()).journals[0]?.steps.map(({ step }) => step)).toEqual(['write', 'end']);
  });

  it('tells of one that rotted, by its line, and passes over one that was never begun', async () => {
    const { store, file } = await begun();
    await writeFile(file, `${await readFile(file, 'utf8')}rotten\n`);
    const { journals, rotted } = await store.open();
    expect(journals).toEqual([]);
    expect(rotted).toMatchObject([{ journal: 'one', problem: { code: 'journal-rotted' } }]);
    expect(rotted[0]?.problem.says).toContain('line 3');
    await writeFile(file, '{"kind":"stick');
    expect(await store.open()).toEqual({ journals: [], rotted: [] });
  });

  it('is refused where there is one of that name, or the disk takes nothing', async () => {
    const { store, file } = await begun();
    expect(await store.begin('one', head)).toMatchObject({ ok: false, problem: { code: 'file-exists' } });
    const shut = new JournalStore(path.join(file, 'below-a-file'), now);
    expect(await shut.begin('two', head)).toMatchObject({ ok: false });
  });
});
