import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createPadLock } from '../../../electron/store/pad-lock.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const pad = { vendorId: 1, productId: 2, product: 'Some pad', serial: null, transport: 'usb' } as const;

/** Another program that holds the pad. */
async function holder(folder: string, lockKey: string): Promise<ChildProcess> {
  const child = spawn(process.execPath, ['tests/support/hold-pad-lock.ts', folder, lockKey], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  const [said] = (await once(child.stdout, 'data')) as [Buffer];
  expect(said.toString().trim()).toBe('taken');
  return child;
}

describe('the lock of a pad', () => {
  it('is had by one at a time, and again once it is given free', async () => {
    const lock = createPadLock(await temporaryFolder());
    const first = await lock.take(pad, '/dev/hidraw0');
    if (!first.ok) throw new Error(first.problem.says);
    const second = await lock.take(pad, '/dev/hidraw0');
    expect(second.ok ? null : second.problem).toEqual({
      code: 'pad-busy',
      says: 'Some pad is in use in this program already; end its capture or memory session first.',
    });
    await first.value();
    const third = await lock.take(pad, '/dev/hidraw0');
    expect(third.ok).toBe(true);
    if (third.ok) await third.value();
  });

  it('leaves other pads alone', async () => {
    const lock = createPadLock(await temporaryFolder());
    const taken = await Promise.all(['/dev/hidraw0', '/dev/hidraw1'].map((key) => lock.take(pad, key)));
    for (const one of taken) {
      expect(one.ok).toBe(true);
      if (one.ok) await one.value();
    }
  });

  it('may be given free more than once and leaves nothing behind', async () => {
    const folder = await temporaryFolder();
    const taken = await createPadLock(folder).take(pad, 'a');
    if (!taken.ok) throw new Error(taken.problem.says);
    await taken.value();
    await taken.value();
    expect(await readdir(folder)).toEqual([]);
  });

  it('holds across programs, names the process that has it, and is free soon after that was killed', async () => {
    const folder = await temporaryFolder();
    const child = await holder(folder, '/dev/hidraw0');
    const lock = createPadLock(folder);
    const refused = await lock.take(pad, '/dev/hidraw0');
    expect(refused.ok ? null : refused.problem.code).toBe('pad-busy');
    expect(refused.ok ? '' : refused.problem.says).toContain(`process ${child.pid}`);
    child.kill('SIGKILL');
    await once(child, 'exit');
    const taken = await lock.take(pad, '/dev/hidraw0');
    expect(taken.ok ? null : taken.problem).toBeNull();
    if (taken.ok) await taken.value();
  });

  it('says why it cannot be had where its folder cannot be written', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a-file');
    await writeFile(file, '');
    const taken = await createPadLock(path.join(file, 'locks')).take(pad, 'a');
    expect(taken.ok ? null : taken.problem.says).toMatch(/could not be written/);
  });

  it('does not know a name where the holder left none', async () => {
    const folder = await temporaryFolder();
    const lock = createPadLock(folder);
    const taken = await lock.take(pad, 'a');
    if (!taken.ok) throw new Error(taken.problem.says);
    const [owner] = (await readdir(folder)).filter((name) => name.endsWith('.json'));
    await writeFile(path.join(folder, owner!), 'half');
    const refused = await lock.take(pad, 'a');
    expect(refused.ok ? '' : refused.problem.says).toContain('another program on this machine');
    await taken.value();
  });
});
