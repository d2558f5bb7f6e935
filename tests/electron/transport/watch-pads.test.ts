import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../core/result.ts';
import type { PadSource } from '../../../electron/bench/pads/pad-source.ts';
import type { HidSystem } from '../../../electron/transport/hid-system.ts';
import { watchNodes } from '../../../electron/transport/watch-nodes.ts';
import { PadWatch } from '../../../electron/transport/watch-pads.ts';
import { FakeClock } from '../../support/fake-clock.ts';
import { fakeDevice, FakeHid, fakeSystem } from '../../support/fake-hid.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

interface Watched {
  readonly hid: FakeHid;
  readonly clock: FakeClock;
  readonly watch: PadWatch;
  readonly heard: (readonly PadSource[])[];
  readonly problems: Problem[];
  readonly hint: () => void;
}

function watched(system: HidSystem = fakeSystem()): Watched {
  const hid = new FakeHid();
  const clock = new FakeClock();
  const problems: Problem[] = [];
  let hear: () => void = () => undefined;
  const watch = new PadWatch({
    hid,
    clock,
    system,
    nodes: (given) => {
      hear = given;
      return () => {
        hear = () => undefined;
      };
    },
    onProblem: (problem) => problems.push(problem),
  });
  return { hid, clock, watch, heard: [], problems, hint: () => hear() };
}

async function started(system?: HidSystem, list = [fakeDevice()]): Promise<Watched> {
  const made = watched(system);
  made.hid.list = list;
  made.watch.start((pads) => made.heard.push(pads));
  await made.clock.passSlowly(1);
  return made;
}

function pathsOf(pads: readonly PadSource[] | undefined): (string | undefined)[] | undefined {
  return pads?.map((pad) => pad.transport.lockKey);
}

/** However busy the machine is. */
const patience = { timeout: 20_000 };

describe('watching for pads', () => {
  it('tells the pads at once, and again only when something changed', async () => {
    const { hid, clock, heard } = await started();
    expect(heard.map(pathsOf)).toEqual([['/dev/hidraw3']]);
    await clock.passSlowly(10_000);
    expect(heard).toHaveLength(1);
    expect(hid.listed).toBeGreaterThan(4);
    expect(hid.listed).toBeLessThan(8);
  });

  it('tells an empty list too', async () => {
    const { clock, watch, heard } = watched();
    watch.start((pads) => heard.push(pads));
    await clock.passSlowly(1);
    expect(heard).toEqual([[]]);
  });

  it('notices a pad that leaves and one that arrives, soon where the system hints at it', async () => {
    const { hid, clock, heard, hint } = await started();
    hid.list = [];
    await clock.passSlowly(2001);
    expect(heard.map(pathsOf).at(-1)).toEqual([]);
    hid.list = [fakeDevice({ path: '/dev/hidraw4' })];
    hint();
    await clock.passSlowly(300);
    expect(heard.map(pathsOf).at(-1)).toEqual(['/dev/hidraw4']);
  });

  it('keeps the key of a pad with a serial number that was plugged in again on another path', async () => {
    const { hid, clock, heard } = await started(fakeSystem(), [fakeDevice({ serialNumber: 'A1' })]);
    hid.list = [];
    await clock.passSlowly(2001);
    hid.list = [fakeDevice({ serialNumber: 'A1', path: '/dev/hidraw9' })];
    await clock.passSlowly(2001);
    expect(heard).toHaveLength(3);
    expect(heard[2]?.[0]?.transport.key).toBe(heard[0]?.[0]?.transport.key);
    expect(heard[2]?.[0]?.transport.lockKey).toBe('/dev/hidraw9');
  });

  it('never gives a key again that a pad had which cannot be told from its like', async () => {
    const twins = { none: {}, zeros: { serialNumber: '0000' }, same: { serialNumber: 'A1' } };
    for (const serial of Object.values(twins)) {
      const both = [fakeDevice({ ...serial, path: '/dev/hidraw1' }), fakeDevice({ ...serial, path: '/dev/hidraw2' })];
      const { hid, clock, heard } = await started(fakeSystem(), both);
      const before = new Set(heard[0]?.map((pad) => pad.transport.key));
      expect(before.size).toBe(2);
      // Pulled one after the other and plugged in the other way round.
      hid.list = [];
      await clock.passSlowly(2001);
      hid.list = [both[1]!];
      await clock.passSlowly(2001);
      hid.list = both;
      await clock.passSlowly(2001);
      const after = heard.at(-1)?.map((pad) => pad.transport.key) ?? [];
      expect(new Set(after).size).toBe(2);
      expect(after.filter((key) => before.has(key))).toEqual([]);
    }
  });

  it('keeps two pads of one kind apart, and the first stays the first when the other leaves', async () => {
    const { hid, clock, heard } = await started();
    const first = heard[0]?.[0]?.transport;
    hid.list = [fakeDevice({ path: '/dev/hidraw1' }), fakeDevice()];
    await clock.passSlowly(2001);
    const keys = heard.at(-1)?.map((pad) => pad.transport.key);
    expect(new Set(keys).size).toBe(2);
    expect(heard.at(-1)?.[1]?.transport).toBe(first);
    hid.list = [fakeDevice()];
    await clock.passSlowly(2001);
    expect(heard.at(-1)?.map((pad) => pad.transport)).toEqual([first]);
  });

  it('never asks for the list while a capture runs, whatever the system hints, and at once afterwards', async () => {
    const { hid, clock, watch, heard, hint } = await started();
    watch.pause();
    const listed = hid.listed;
    hid.list = [];
    hint();
    await clock.passSlowly(60_000);
    expect(hid.listed).toBe(listed);
    watch.resume();
    await clock.passSlowly(1);
    expect(heard.at(-1)).toEqual([]);
  });

  it('tells when a pad may be opened that could not be before', async () => {
    const refusals: Record<string, unknown> = { '/dev/hidraw3': new Error('EACCES: permission denied') };
    const { clock, heard } = await started(fakeSystem({ refusals }));
    expect(heard[0]?.[0]?.problem?.code).toBe('pad-no-permission');
    expect(heard[0]?.[0]?.rule).not.toBeNull();
    refusals['/dev/hidraw3'] = null;
    await clock.passSlowly(2001);
    expect(heard[1]?.[0]).toMatchObject({ problem: null, rule: null });
  });

  it('says once that the list cannot be had, keeps what it knew and goes on', async () => {
    const { hid, clock, heard, problems } = await started();
    hid.listFault = new Error('out of memory');
    await clock.passSlowly(10_000);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.says).toContain('out of memory');
    expect(heard).toHaveLength(1);
    hid.listFault = null;
    hid.list = [];
    await clock.passSlowly(2001);
    expect(heard.at(-1)).toEqual([]);
  });

  it('waits for nothing once it is closed', async () => {
    const { hid, clock, watch, hint } = await started();
    await watch.close();
    hint();
    expect(clock.waiting).toBe(0);
    const listed = hid.listed;
    await clock.passSlowly(10_000);
    expect(hid.listed).toBe(listed);
  });
});

describe('hints from the folder of device nodes', () => {
  it('come when a node of a HID device appears, and from nothing else', async () => {
    const folder = await temporaryFolder();
    const hints = { ended: 0, going: 0 };
    const end = watchNodes('linux', folder)(() => (hints.ended += 1));
    const endOther = watchNodes('linux', folder)(() => (hints.going += 1));
    await writeFile(path.join(folder, 'tty9'), '');
    await writeFile(path.join(folder, 'hidraw0'), '');
    await expect.poll(() => Math.min(hints.ended, hints.going), patience).toBeGreaterThan(0);
    end();
    const before = { ...hints };
    await writeFile(path.join(folder, 'hidraw1'), '');
    await expect.poll(() => hints.going, patience).toBeGreaterThan(before.going);
    expect(hints.ended).toBe(before.ended);
    endOther();
  });

  it('are not had, without harm, where the folder cannot be watched', async () => {
    const end = watchNodes('linux', path.join(await temporaryFolder(), 'none'))(() => undefined);
    expect(end).not.toThrow();
  });
});
