import { describe, expect, it } from 'vitest';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { HidTransport } from '../../../electron/transport/hid-transport.ts';
import { FakeClock, settle } from '../../support/fake-clock.ts';
import { FakeHid } from '../../support/fake-hid.ts';
import { RecordingListener } from '../../support/recording-listener.ts';

const identity: PadIdentity = {
  vendorId: 0x1209,
  productId: 0xab01,
  product: 'Some pad',
  serial: null,
  transport: 'usb',
};

interface Bench {
  readonly hid: FakeHid;
  readonly clock: FakeClock;
  readonly transport: HidTransport;
  readonly listener: RecordingListener;
}

function bench(hasReportIds = true): Bench {
  const hid = new FakeHid();
  const clock = new FakeClock();
  const pad = { key: 'k', path: '/dev/hidraw3', identity, descriptor: null, hasReportIds };
  return {
    hid,
    clock,
    transport: new HidTransport(pad, { hid, clock, platform: 'linux' }),
    listener: new RecordingListener(),
  };
}

async function opened(hasReportIds = true): Promise<Bench> {
  const made = bench(hasReportIds);
  expect((await made.transport.open(made.listener)).ok).toBe(true);
  return made;
}

describe('the HID transport', () => {
  it('listens for errors before it listens for data', async () => {
    const { hid } = await opened();
    expect(hid.opened).toEqual(['/dev/hidraw3']);
    expect(hid.handle.done).toEqual(['on error', 'on data']);
  });

  it('stamps each report on arrival and splits its id off where the device has ids', async () => {
    const { hid, clock, listener } = await opened();
    const start = clock.micros();
    hid.handle.data(0x30, 1, 2, 3);
    clock.pass(1.5);
    hid.handle.data(0x21, 4);
    expect(listener.heard).toEqual([`report ${start} 48 010203`, `report ${start + 1500} 33 04`]);
  });

  it('hands every byte on where the device has no ids', async () => {
    const { hid, clock, listener } = await opened(false);
    hid.handle.data(0x30, 1);
    expect(listener.heard).toEqual([`report ${clock.micros()} 0 3001`]);
  });

  it('hands a report of no bytes on as what it is', async () => {
    for (const hasReportIds of [true, false]) {
      const { hid, clock, listener } = await opened(hasReportIds);
      hid.handle.data();
      expect(listener.heard).toEqual([`report ${clock.micros()} 0 `]);
    }
  });

  it('tells once that the pad is gone, closes it and tells nothing more', async () => {
    const { hid, listener, transport } = await opened();
    hid.handle.data(1, 2);
    hid.handle.fail('could not read from HID device: unexpected poll error (device disconnected)');
    hid.handle.fail('could not read from HID device');
    hid.handle.data(1, 3);
    expect(listener.heard.slice(1)).toEqual(['lost pad-gone']);
    expect(listener.problems[0]?.says).toBe('Some pad is no longer there; plug it in again.');
    await transport.close();
    expect(hid.handle.done.filter((step) => step === 'close')).toHaveLength(1);
  });

  it('can be opened again after the pad was gone', async () => {
    const { hid, listener, transport } = await opened();
    hid.handle.closeFails = true;
    hid.handle.fail('could not read from HID device');
    expect((await transport.open(listener)).ok).toBe(true);
    hid.handle.data(1, 7);
    expect(listener.heard.at(-1)).toMatch(/ 1 07$/);
  });

  it('closes once, however often it is told to, and at any time', async () => {
    const { hid, transport } = await opened();
    await Promise.all([transport.close(), transport.close()]);
    await transport.close();
    expect(hid.handle.done.filter((step) => step === 'close')).toHaveLength(1);
    await bench().transport.close();
  });

  it('does not stay open when it is closed while it is being opened', async () => {
    const { hid, transport, listener } = bench();
    const opening = transport.open(listener);
    await transport.close();
    const result = await opening;
    expect(result.ok).toBe(false);
    expect(hid.handle.done).toEqual(['close']);
  });

  it('refuses to be opened twice', async () => {
    const { transport, listener } = await opened();
    const second = await transport.open(listener);
    expect(second.ok ? null : second.problem.code).toBe('pad-busy');
  });

  it('tells apart why it cannot be opened', async () => {
    for (const [words, code] of [
      ['cannot open device with path /dev/hidraw3: Permission denied', 'pad-no-permission'],
      ['cannot open device with path /dev/hidraw3: Device or resource busy', 'pad-busy'],
      ['cannot open device with path /dev/hidraw3: No such file or directory', 'pad-gone'],
      ['cannot open device with path /dev/hidraw3: Something new', 'pad-protocol'],
    ] as const) {
      const { hid, transport, listener } = bench();
      hid.openFault = new Error(words);
      const result = await transport.open(listener);
      expect(result.ok ? null : result.problem.code).toBe(code);
      hid.openFault = null;
      expect((await transport.open(listener)).ok).toBe(true);
    }
  });

  it('sends with the id first, and reads a feature without it', async () => {
    const { hid, transport } = await opened();
    hid.handle.answers.push(new Uint8Array(), new Uint8Array(), Uint8Array.of(5, 10, 11));
    expect(await transport.sendOutput(1, Uint8Array.of(0xaa))).toEqual({ ok: true, value: undefined });
    expect(await transport.sendFeature(2, Uint8Array.of(0xbb))).toEqual({ ok: true, value: undefined });
    expect(await transport.readFeature(5, 2)).toEqual({ ok: true, value: Uint8Array.of(10, 11) });
    expect(hid.handle.done.filter((step) => !step.endsWith('…')).slice(2)).toEqual([
      'write 01aa',
      'feature 02bb',
      'read 5 3',
    ]);
  });

  it('asks one thing at a time, and a refusal does not stop the next', async () => {
    const { hid, transport } = await opened();
    hid.handle.answers.push(new Error('ioctl (GFEATURE): Input/output error'), Uint8Array.of(9, 1));
    const [refused, read] = await Promise.all([transport.readFeature(8, 1), transport.readFeature(9, 1)]);
    expect(refused.ok ? null : refused.problem.code).toBe('pad-protocol');
    expect(read).toEqual({ ok: true, value: Uint8Array.of(1) });
    expect(hid.handle.done.slice(2)).toEqual(['read 8 2 …', 'read 8 2', 'read 9 2 …', 'read 9 2']);
  });

  it('lets a request under way end before it closes, and refuses further ones', async () => {
    const { hid, transport } = await opened();
    const sending = transport.sendOutput(1, Uint8Array.of(1));
    await settle();
    const closing = transport.close();
    const late = await transport.sendOutput(1, Uint8Array.of(2));
    expect(late.ok ? null : late.problem.code).toBe('pad-not-open');
    expect((await sending).ok).toBe(true);
    await closing;
    expect(hid.handle.done.slice(2)).toEqual(['write 0101 …', 'write 0101', 'close']);
  });
});
