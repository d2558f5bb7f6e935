/** The product's own ports as the guest uses them: the real library, the real system, the real clock. */
import { systemClock } from '../../../electron/bench/time/clock.ts';
import { findPads, type FoundPad } from '../../../electron/transport/find-pads.ts';
import type { HidPort } from '../../../electron/transport/hid-port.ts';
import { hidSystem } from '../../../electron/transport/hid-system.ts';
import { HidTransport } from '../../../electron/transport/hid-transport.ts';
import { loadHid } from '../../../electron/transport/node-hid.ts';

export const system = hidSystem('linux');

export async function hidPort(): Promise<HidPort> {
  const hid = await loadHid();
  if (!hid.ok) throw new Error(hid.problem.says);
  return hid.value;
}

/** The pads as the product lists them. */
export async function listed(): Promise<readonly FoundPad[]> {
  return findPads(await hidPort(), system);
}

export async function transportOf(pad: FoundPad): Promise<HidTransport> {
  return new HidTransport({ ...pad, key: pad.path }, { hid: await hidPort(), clock: systemClock, platform: 'linux' });
}
