import { describe, expect, it } from 'vitest';
import { packedProfiles } from '../../../core/pad/packed-profiles.ts';
import { plainReport, sensorReport } from '../../../core/simulate/reports.ts';
import { findPads } from '../../../electron/transport/find-pads.ts';
import type { HidDevice } from '../../../electron/transport/hid-port.ts';
import type { HidSystem } from '../../../electron/transport/hid-system.ts';
import { fakeDevice, FakeHid, fakeSystem } from '../../support/fake-hid.ts';

function find(list: HidDevice[], system: HidSystem = fakeSystem()): ReturnType<typeof findPads> {
  return findPads(Object.assign(new FakeHid(), { list }), system);
}

const known = packedProfiles[0]!.pads[0]!;

describe('finding pads', () => {
  it('keeps joysticks, gamepads and multi-axis controllers, and leaves everything else out', async () => {
    const usages = [1, 2, 4, 5, 6, 8, 9];
    const found = await find(usages.map((usage) => fakeDevice({ usage, path: `/dev/hidraw${usage}` })));
    expect(found.map((pad) => pad.path)).toEqual(['/dev/hidraw4', '/dev/hidraw5', '/dev/hidraw8']);
    expect(await find([fakeDevice({ usagePage: 0xff00, usage: 5 })])).toEqual([]);
  });

  it('keeps a vendor-defined pad where a profile knows it, but not its other interfaces', async () => {
    const found = await find([
      fakeDevice({ ...known, path: '/dev/hidraw1', usagePage: 0xff01, usage: 1 }),
      fakeDevice({ ...known, path: '/dev/hidraw2', usagePage: 1, usage: 6 }),
    ]);
    expect(found.map((pad) => pad.path)).toEqual(['/dev/hidraw1']);
    expect(found[0]?.hasReportIds).toBe(true);
  });

  it('makes one pad of several entries of one path, in the order of the paths', async () => {
    const found = await find([
      fakeDevice({ path: '/dev/hidraw10' }),
      fakeDevice({ path: '/dev/hidraw2', usagePage: 12, usage: 1, product: 'Its media keys' }),
      fakeDevice({ path: '/dev/hidraw2', product: 'The pad itself' }),
      fakeDevice({ path: undefined }),
    ]);
    expect(found.map((pad) => [pad.path, pad.identity.product])).toEqual([
      ['/dev/hidraw2', 'The pad itself'],
      ['/dev/hidraw10', 'Some pad'],
    ]);
  });

  it('knows from the descriptor whether reports have ids', async () => {
    const ids = async (descriptor: Uint8Array): Promise<boolean | undefined> =>
      (await find([fakeDevice()], fakeSystem({ facts: { descriptor } })))[0]?.hasReportIds;
    expect(await ids(sensorReport.descriptor)).toBe(true);
    expect(await ids(plainReport.descriptor)).toBe(false);
    expect(await ids(Uint8Array.of(0xff, 0xfe))).toBe(false);
  });

  it('says why a pad cannot be opened and gives the rule, without opening it', async () => {
    const refusals = { '/dev/hidraw3': new Error("EACCES: permission denied, access '/dev/hidraw3'") };
    const [pad] = await find([fakeDevice()], fakeSystem({ refusals }));
    expect(pad?.problem?.code).toBe('pad-no-permission');
    expect(pad?.rule?.file).toBe('/etc/udev/rules.d/70-stickwright-1209-ab01.rules');
    const [open] = await find([fakeDevice()]);
    expect(open).toMatchObject({ problem: null, rule: null });
  });

  it('leaves a pad out that left between the list and the look at it', async () => {
    const refusals = { '/dev/hidraw3': new Error('ENOENT: no such file or directory') };
    expect(await find([fakeDevice()], fakeSystem({ refusals }))).toEqual([]);
  });

  it('tells Bluetooth from USB by what each system says', async () => {
    const transportOf = async (device: HidDevice, system: HidSystem): Promise<string | undefined> =>
      (await find([device], system))[0]?.identity.transport;
    expect(await transportOf(fakeDevice(), fakeSystem({ facts: { bus: 5 } }))).toBe('bluetooth');
    expect(await transportOf(fakeDevice({ interface: -1 }), fakeSystem({ facts: { bus: 3 } }))).toBe('usb');
    const windows = fakeSystem({ platform: 'win32', facts: { bus: null } });
    const path = String.raw`\\?\hid#{00001124-0000-1000-8000-00805f9b34fb}_vid&02abcd`;
    expect(await transportOf(fakeDevice({ path }), windows)).toBe('bluetooth');
    expect(await transportOf(fakeDevice({ path: String.raw`\\?\hid#vid_1209&pid_ab01` }), windows)).toBe('usb');
    const mac = fakeSystem({ platform: 'darwin', facts: { bus: null } });
    expect(await transportOf(fakeDevice({ interface: -1 }), mac)).toBe('bluetooth');
    expect(await transportOf(fakeDevice({ interface: 0 }), mac)).toBe('usb');
  });

  it('calls a pad without a name by its numbers, and keeps an empty serial number as none', async () => {
    const [pad] = await find([fakeDevice({ product: ' ', serialNumber: '' })]);
    expect(pad?.identity).toMatchObject({ product: 'Pad 1209:ab01', serial: null });
  });
});
