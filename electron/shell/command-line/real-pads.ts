/** The real pads of this machine, looked for once. */
import { done, type Result } from '../../../core/result.ts';
import { systemClock } from '../../bench/time/clock.ts';
import { findPads, type FoundPad } from '../../transport/find-pads.ts';
import { hidSystem } from '../../transport/hid-system.ts';
import { HidTransport } from '../../transport/hid-transport.ts';
import type { HidPort } from '../../transport/hid-port.ts';
import { loadHid } from '../../transport/node-hid.ts';

export interface RealPads {
  readonly pads: readonly FoundPad[];
  readonly transport: (pad: FoundPad) => HidTransport;
}

/** Fails where the HID library or the list cannot be had. */
export async function lookForPads(): Promise<Result<RealPads>> {
  const hid = await loadHid();
  if (!hid.ok) return hid;
  const system = hidSystem(process.platform);
  const pads = await listPads(hid.value, system);
  if (!pads.ok) return pads;
  return done({
    pads: pads.value,
    transport: (pad) =>
      new HidTransport({ ...pad, key: pad.path }, { hid: hid.value, clock: systemClock, platform: process.platform }),
  });
}

async function listPads(hid: HidPort, system: ReturnType<typeof hidSystem>): Promise<Result<readonly FoundPad[]>> {
  try {
    return done(await findPads(hid, system));
  } catch (thrown) {
    const words = thrown instanceof Error ? thrown.message : String(thrown);
    const says = `The system does not list its HID devices ("${words}"); try again, or start it with more rights.`;
    return { ok: false, problem: { code: 'pads-not-listed', says } };
  }
}
