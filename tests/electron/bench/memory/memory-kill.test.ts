/** The program killed for good (SIGKILL, a process of its own) amid a write: what the next one finds and can do. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { memoryEnd } from '../../../../core/image/differing-bytes.ts';
import { faultImage, faultMap, FIRST_BLOCK } from '../../../support/fault-pad.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { faultBench, openJournals, show, write } from '../fault-bench.ts';
import { valueOf } from '../make-bench.ts';

/** Killed with this command; the memory that the pad is left with. */
async function kill(folder: string, command: number, when: 'before' | 'after'): Promise<Uint8Array> {
  const script = 'tests/support/write-until-killed.ts';
  const child = spawn(process.execPath, [script, folder, String(command), when], { stdio: 'inherit' });
  onTestFinished(() => void child.kill('SIGKILL'));
  await once(child, 'exit');
  expect(child.signalCode).toBe('SIGKILL');
  return new Uint8Array(await readFile(path.join(folder, 'pad-memory.bin')));
}

const isAsBefore = (image: Uint8Array): boolean =>
  memoryEnd({ now: image, unknown: [] }, faultImage(), faultImage(), faultMap) === 'before';

describe('a program that was killed amid a write', () => {
  it('leaves no journal where it had only read', async () => {
    const folder = await temporaryFolder();
    const image = await kill(folder, FIRST_BLOCK - 1, 'after');
    expect(isAsBefore(image)).toBe(true);
    const next = await faultBench({ folder, pads: [{ image }] });
    expect(await openJournals(next)).toEqual([]);
  });

  it.each([
    ['before its first block', FIRST_BLOCK, 'before', 'before', 'restore'],
    ['after its first block', FIRST_BLOCK, 'after', 'differs', 'restore'],
    ['when the first block is read back', FIRST_BLOCK + 1, 'before', 'differs', 'finish'],
    ['before the marker', FIRST_BLOCK + 4, 'before', 'differs', 'finish'],
    ['after the marker', FIRST_BLOCK + 4, 'after', 'after', 'restore'],
    ['while the whole is compared', FIRST_BLOCK + 9, 'after', 'after', 'restore'],
  ] as const)('leaves a journal %s, and the next one puts it right', async (_, command, when, stands, doing) => {
    const folder = await temporaryFolder();
    const image = await kill(folder, command, when);
    const next = await faultBench({ folder, pads: [{ image }] });
    const [journal] = valueOf(await next.made.bench.handle('journals.list', {}));
    expect(journal).toMatchObject({ pad: next.handle, map: faultMap.id, restores: false });
    const id = journal?.journal ?? '';
    const shown = await show(next, next.handle, id);
    expect(shown).toMatchObject({ end: stands, problem: null });
    if (stands === 'differs') {
      expect(shown.bytes.length).toBeGreaterThan(0);
      const end = await write(next, next.handle, doing === 'restore' ? { restore: id } : { finish: id });
      expect(end).toMatchObject({ end: { restore: 'before', finish: 'after' }[doing], problem: null });
      expect(isAsBefore(next.pad.image)).toBe(doing === 'restore');
    }
    expect(await openJournals(next)).toEqual([]);
  });
});
