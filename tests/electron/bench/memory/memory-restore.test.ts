/** A kept image that is brought back to the pad that it was read from, also over a write that broke off. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { toHex } from '../../../../core/hid/hex.ts';
import { memoryEnd } from '../../../../core/image/differing-bytes.ts';
import { Vault } from '../../../../electron/store/image-vault.ts';
import { faultImage, faultMap, victim } from '../../../support/fault-pad.ts';
import { breakOff, faultBench, openJournals, planned, read, show, write, type FaultBench } from '../fault-bench.ts';
import { valueOf } from '../make-bench.ts';

const isAsBefore = (image: Uint8Array): boolean =>
  memoryEnd({ now: image, unknown: [] }, faultImage(), faultImage(), faultMap) === 'before';

/** The wish to bring the whole of a kept image back to the first pad, which is read for it. */
async function restoring(bench: FaultBench, handle: string, kept: string) {
  const { image } = await read(bench, handle);
  const wish = { restore: { image: kept, scope: 'whole' as const } };
  const request = { image: image ?? '', map: faultMap.id, wish };
  return valueOf(await bench.made.bench.handle('images.plan', request));
}

describe('a kept image', () => {
  it('is brought back where the memory has bytes that change by themselves', async () => {
    const bench = await faultBench();
    const { handle, pad } = bench;
    const { image: kept } = await read(bench, handle);
    expect(await write(bench, handle, await planned(bench, handle))).toMatchObject({ end: 'after' });
    const { plan } = await restoring(bench, handle, kept ?? '');
    expect(await write(bench, handle, { plan })).toMatchObject({ end: 'after', problem: null });
    expect(isAsBefore(pad.image)).toBe(true);
  });

  it('is not taken from a patch file whose result was never kept', async () => {
    const bench = await faultBench();
    const { handle, made } = bench;
    const { image: kept } = await read(bench, handle);
    await write(bench, handle, await planned(bench, handle));
    const { patch } = await restoring(bench, handle, kept ?? '');
    const edited = patch.replace(/"result": "[0-9a-f]{64}"/u, `"result": "${'0'.repeat(64)}"`);
    expect(edited).not.toBe(patch);
    const { plan } = valueOf(await made.bench.handle('images.readPatch', { text: edited }));
    const refused = await made.bench.handle('memory.preview', { pad: handle, wish: { plan } });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'restore-not-kept' } });
  });
});

describe('an image that was taken in from a file', () => {
  it('brings no implausible number into a pad by way of a patch file that calls it a restore', async () => {
    const bench = await faultBench();
    const { handle, made } = bench;
    const { image } = await read(bench, handle);
    await made.bench.handle('memory.allow', { pad: handle, writing: true });
    const vault = new Vault(path.join(made.folder, 'vault'));
    const before = valueOf(await vault.read(image ?? ''));
    const after = Uint8Array.from(before).fill(0, 0x40, 0x49);
    const kept = valueOf(await vault.keep(after, 'taken in', faultMap.id, new Date(0)));
    const changes = [{ offset: 0x40, old: toHex(before.subarray(0x40, 0x49)), new: '00'.repeat(9), means: 'undo' }];
    const head = { kind: 'stickwright-patch', version: 1, map: faultMap.id, size: faultMap.size };
    const patch = { ...head, sha256: image, changes, result: kept.sha256, restores: true };
    const { plan } = valueOf(await made.bench.handle('images.readPatch', { text: JSON.stringify(patch) }));
    const refused = await made.bench.handle('memory.preview', { pad: handle, wish: { plan } });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'restore-implausible' } });
    expect(await made.bench.handle('images.apply', { plan })).toMatchObject({
      ok: false,
      problem: { code: 'restore-implausible' },
    });
  });
});

describe('a kept image over a write that broke off', () => {
  it('leaves that write known where it was undone', async () => {
    const bench = await faultBench();
    const { made, pad } = bench;
    const handle = await breakOff(bench);
    const [broken] = valueOf(await made.bench.handle('journals.list', {}));
    const { plan } = await restoring(bench, handle, broken?.before ?? '');
    const left = Uint8Array.from(pad.image);
    pad.arm({ kind: 'write refused always', k: 0 });
    const end = await write(bench, handle, { plan });
    pad.mend();
    expect(end).toMatchObject({ end: 'before', problem: { code: 'memory-refused' } });
    expect(memoryEnd({ now: pad.image, unknown: [] }, left, left, faultMap)).toBe('before');
    expect(await openJournals(bench)).toEqual([broken?.journal]);
  });

  it('leaves that write known where it broke off too and was then taken back', async () => {
    const bench = await faultBench();
    const { made, pad } = bench;
    pad.image[victim.elsewhere] = 0x11;
    const { image: older } = await read(bench, bench.handle);
    pad.image[victim.elsewhere] = faultImage()[victim.elsewhere] ?? 0;
    const handle = await breakOff(bench);
    const [first = ''] = await openJournals(bench);
    const { plan } = await restoring(bench, handle, older ?? '');
    await made.bench.handle('memory.allow', { pad: handle, writing: true });
    pad.arm({ kind: 'unplugged after', k: 24 });
    expect(await write(bench, handle, { plan })).toMatchObject({ end: 'differs', problem: { code: 'pad-gone' } });
    pad.mend();
    await bench.open(pad);
    const [second = ''] = await openJournals(bench);
    expect(second).not.toBe(first);
    expect(await show(bench, handle, second)).toMatchObject({ end: 'differs' });
    expect(await write(bench, handle, { restore: second })).toMatchObject({ end: 'before', problem: null });
    expect(await openJournals(bench)).toEqual([first]);
    expect(await show(bench, handle, first)).toMatchObject({ end: 'differs' });
    expect(await write(bench, handle, { restore: first })).toMatchObject({ end: 'before', problem: null });
    expect(isAsBefore(pad.image)).toBe(true);
    expect(await openJournals(bench)).toEqual([]);
  });

  it('ends that write where it was written', async () => {
    const bench = await faultBench();
    const handle = await breakOff(bench);
    const [broken] = valueOf(await bench.made.bench.handle('journals.list', {}));
    const { plan } = await restoring(bench, handle, broken?.before ?? '');
    expect(await write(bench, handle, { plan })).toMatchObject({ end: 'after', problem: null });
    expect(isAsBefore(bench.pad.image)).toBe(true);
    expect(await openJournals(bench)).toEqual([]);
  });
});
