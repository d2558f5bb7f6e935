import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { describe, expect, it, onTestFinished } from 'vitest';
import { thisOwner, type Owner } from '../../../electron/store/lock-owner.ts';
import { createPadLock } from '../../../electron/store/pad-lock.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const pad = { vendorId: 1, productId: 2, product: 'Some pad', serial: null, transport: 'usb' } as const;

/** The files of the locks of a folder: one where one is held. */
async function lockFiles(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile()).map((entry) => path.join(entry.parentPath, entry.name));
}

/** A lock that an owner left behind; a future date is what a clock that was set back since then makes of it. */
async function leaveBehind(folder: string, key: string, part: Partial<Owner>, hoursAhead = 0): Promise<string> {
  const taken = await createPadLock(folder).take(pad, key, unheard);
  if (!taken.ok) throw new Error(taken.problem.says);
  const [file] = await lockFiles(folder);
  await taken.value();
  await mkdir(path.dirname(file!));
  await writeFile(file!, JSON.stringify({ ...thisOwner(), ...part }));
  const date = new Date(Date.now() + hoursAhead * 3_600_000);
  await utimes(file!, date, date);
  return file!;
}

/** For a lock that is not lost in its test. */
const unheard = (): void => undefined;

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
    const first = await lock.take(pad, '/dev/hidraw0', unheard);
    if (!first.ok) throw new Error(first.problem.says);
    const second = await lock.take(pad, '/dev/hidraw0', unheard);
    expect(second.ok ? null : second.problem).toEqual({
      code: 'pad-busy',
      says: 'Some pad is in use in this program already; end its capture or memory session first.',
    });
    await first.value();
    const third = await lock.take(pad, '/dev/hidraw0', unheard);
    expect(third.ok).toBe(true);
    if (third.ok) await third.value();
  });

  it('leaves other pads alone', async () => {
    const lock = createPadLock(await temporaryFolder());
    const taken = await Promise.all(['/dev/hidraw0', '/dev/hidraw1'].map((key) => lock.take(pad, key, unheard)));
    for (const one of taken) {
      expect(one.ok).toBe(true);
      if (one.ok) await one.value();
    }
  });

  it('may be given free more than once and leaves nothing behind', async () => {
    const folder = await temporaryFolder();
    const taken = await createPadLock(folder).take(pad, 'a', unheard);
    if (!taken.ok) throw new Error(taken.problem.says);
    await taken.value();
    await taken.value();
    expect(await readdir(folder)).toEqual([]);
  });

  it('holds across programs, names the process that has it, and is free soon after that was killed', async () => {
    const folder = await temporaryFolder();
    const child = await holder(folder, '/dev/hidraw0');
    const lock = createPadLock(folder);
    const refused = await lock.take(pad, '/dev/hidraw0', unheard);
    expect(refused.ok ? null : refused.problem.code).toBe('pad-busy');
    expect(refused.ok ? '' : refused.problem.says).toContain(`process ${child.pid}`);
    child.kill('SIGKILL');
    await once(child, 'exit');
    const taken = await lock.take(pad, '/dev/hidraw0', unheard);
    expect(taken.ok ? null : taken.problem).toBeNull();
    if (taken.ok) await taken.value();
  });

  it('says why it cannot be had where its folder cannot be written', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'a-file');
    await writeFile(file, '');
    const taken = await createPadLock(path.join(file, 'locks')).take(pad, 'a', unheard);
    expect(taken.ok ? null : taken.problem.says).toMatch(/could not be written/);
  });

  it('does not know a name where the holder left none', async () => {
    const folder = await temporaryFolder();
    const lock = createPadLock(folder);
    const taken = await lock.take(pad, 'a', unheard);
    if (!taken.ok) throw new Error(taken.problem.says);
    const [file] = await lockFiles(folder);
    await writeFile(file!, 'half');
    const refused = await lock.take(pad, 'a', unheard);
    expect(refused.ok ? '' : refused.problem.says).toContain('another program on this machine');
    await taken.value();
  });
});

describe('who holds the lock of a pad', () => {
  it('is no program that was killed, though its clock was an hour ahead', async () => {
    const folder = await temporaryFolder();
    const child = await holder(folder, 'a');
    child.kill('SIGKILL');
    await once(child, 'exit');
    const [file] = await lockFiles(folder);
    const ahead = new Date(Date.now() + 3_600_000);
    await utimes(file!, ahead, ahead);
    const taken = await createPadLock(folder, { isRenewed: shallNotWait }).take(pad, 'a', unheard);
    expect(taken.ok ? null : taken.problem).toBeNull();
    expect(await lockFiles(folder)).toHaveLength(1);
  });

  it.each([
    ['a process that got the number of an earlier one', { start: '1' }],
    ['a process of before the machine’s last start', { boot: 'another start' }],
    ['a process whose number nobody has', { pid: 2 ** 22 + 1 }],
    ['a process of before the last start, of a machine that is called otherwise by now', { boot: 'x', host: 'here' }],
  ])('is not %s', async (_who, part) => {
    const folder = await temporaryFolder();
    await leaveBehind(folder, 'a', part, 1);
    const still = (): Promise<boolean> => Promise.resolve(false);
    const taken = await createPadLock(folder, { isRenewed: still }).take(pad, 'a', unheard);
    expect(taken.ok ? null : taken.problem).toBeNull();
  });

  it('is a process that runs, however old its lock looks and whatever the machine is called now', async () => {
    const folder = await temporaryFolder();
    await leaveBehind(folder, 'a', { host: 'renamed', since: 'then' }, -24);
    const refused = await createPadLock(folder, { isRenewed: shallNotWait }).take(pad, 'a', unheard);
    expect(refused.ok ? '' : refused.problem.says).toBe(
      `Some pad is in use by process ${process.pid} on renamed, since then; end its capture or close it, then try again.`,
    );
  });

  it.each([
    ['of another machine', { host: 'elsewhere', boot: 'there' }],
    ['of another container', { space: 'pid:[1]' }],
    ['of a system that does not tell when a process was started', { start: null }],
  ])('is a process %s as long as it renews its lock', async (_who, part) => {
    const folder = await temporaryFolder();
    const file = await leaveBehind(folder, 'a', part);
    const asked: string[] = [];
    const watched = (renewed: boolean) => ({
      isRenewed: (one: string) => Promise.resolve((asked.push(one), renewed)),
    });
    expect(await createPadLock(folder, watched(true)).take(pad, 'a', unheard)).toMatchObject({ ok: false });
    expect((await createPadLock(folder, watched(false)).take(pad, 'a', unheard)).ok).toBe(true);
    expect(asked).toEqual([file, file]);
  });

  it('is seen by the renewing itself, and by its end', async () => {
    const folder = await temporaryFolder();
    const elsewhere = { ...thisOwner(), host: 'elsewhere', boot: 'there' };
    const first = await createPadLock(folder, { self: elsewhere, beatMillis: 50 }).take(pad, 'a', unheard);
    if (!first.ok) throw new Error(first.problem.says);
    const lock = createPadLock(folder);
    expect(await lock.take(pad, 'a', unheard)).toMatchObject({ ok: false, problem: { code: 'pad-busy' } });
    await first.value();
    await leaveBehind(folder, 'a', { host: 'elsewhere', boot: 'there' });
    expect((await lock.take(pad, 'a', unheard)).ok).toBe(true);
  });

  it('is told when the lock is another’s, once, and then frees nothing of that one', async () => {
    const folder = await temporaryFolder();
    const said: string[] = [];
    let hear: () => void = () => undefined;
    const lost = new Promise<void>((resolve) => (hear = resolve));
    const first = await createPadLock(folder, { beatMillis: 20 }).take(pad, 'a', ({ says }) => {
      said.push(says);
      hear();
    });
    if (!first.ok) throw new Error(first.problem.says);
    const [file] = await lockFiles(folder);
    await rm(file!);
    const second = await createPadLock(folder).take(pad, 'a', unheard);
    expect(second.ok).toBe(true);
    await lost;
    await first.value();
    expect(said).toEqual([
      'Some pad was taken over by another program, so this one stopped; close the other program and begin again.',
    ]);
    expect(await lockFiles(folder)).toHaveLength(1);
  });

  it('is told nothing where it freed the pad itself', async () => {
    const folder = await temporaryFolder();
    const said: string[] = [];
    const taken = await createPadLock(folder, { beatMillis: 1 }).take(pad, 'a', ({ says }) => void said.push(says));
    if (!taken.ok) throw new Error(taken.problem.says);
    await taken.value();
    const next = await createPadLock(folder, { beatMillis: 1 }).take(pad, 'b', unheard);
    if (next.ok) await next.value();
    expect(said).toEqual([]);
  });

  it('is one of two processes that take over from a killed one at once, twenty times', async () => {
    const folder = await temporaryFolder();
    const contest = ['tests/support/contest-pad-lock.ts', folder];
    const rivals = [1, 2].map(() => spawn(process.execPath, contest, { stdio: ['pipe', 'pipe', 'inherit'] }));
    onTestFinished(() => rivals.forEach((rival) => void rival.kill('SIGKILL')));
    const answers = rivals.map((rival) => createInterface({ input: rival.stdout })[Symbol.asyncIterator]());
    const sayBoth = async (word: string): Promise<(string | undefined)[]> => {
      for (const rival of rivals) rival.stdin.write(`${word}\n`);
      return Promise.all(answers.map(async (answer) => (await answer.next()).value));
    };
    for (let round = 0; round < 20; round += 1) {
      await leaveBehind(folder, 'a', { start: '1' });
      expect((await sayBoth('take')).toSorted()).toEqual(['pad-busy', 'taken']);
      const [file] = await lockFiles(folder);
      const owner = JSON.parse(await readFile(file!, 'utf8')) as Owner;
      expect(rivals.map(({ pid }) => pid)).toContain(owner.pid);
      await sayBoth('free');
      expect(await readdir(folder)).toEqual([]);
    }
  });
});

/** Nobody is watched where it can be looked up who runs. */
function shallNotWait(): Promise<boolean> {
  throw new Error('watched');
}
