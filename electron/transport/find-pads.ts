/** Which of the listed HID devices are pads, one entry each, with everything that opening them needs. */
import { parseDescriptor } from '../../core/hid/descriptor.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { findProfile } from '../../core/pad/profiles.ts';
import type { Problem } from '../../core/result.ts';
import type { AccessRule } from '../bench/pads/pad-source.ts';
import type { HidDevice, HidPort } from './hid-port.ts';
import { hidFault, hidProblem } from './hid-problem.ts';
import type { HidFacts, HidSystem } from './hid-system.ts';
import type { HidPad } from './hid-transport.ts';
import { udevRule } from './udev-rule.ts';

export interface FoundPad extends Omit<HidPad, 'key'> {
  /** Ids, serial, interface and transport: the same when the pad is plugged in again, on whatever path. */
  readonly likeness: string;
  /** Why it cannot be opened, or null. */
  readonly problem: Problem | null;
  readonly rule: AccessRule | null;
}

/** Asks the system for all its HID devices; in order of their paths. Rejects with what the library throws. */
export async function findPads(hid: HidPort, system: HidSystem): Promise<readonly FoundPad[]> {
  const byPath = new Map<string, HidDevice[]>();
  for (const device of await hid.devices()) {
    const { path } = device;
    if (path !== undefined) byPath.set(path, [...(byPath.get(path) ?? []), device]);
  }
  const paths = [...byPath].sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }));
  const found = await Promise.all(paths.map(([path, entries]) => describePad(path, entries, system)));
  return found.filter((pad) => pad !== null);
}

async function describePad(path: string, entries: readonly HidDevice[], system: HidSystem): Promise<FoundPad | null> {
  const device = entries.find(isPad) ?? entries.find(isKnownPad);
  if (device === undefined) return null;
  const refusal = await system.refusal(path);
  const fault = refusal === null ? null : hidFault(refusal);
  // Gone between the list and now.
  if (fault === 'pad-gone') return null;
  const facts = await system.facts(path);
  const identity = identify(device, facts, system.platform);
  const hasRule = fault === 'pad-no-permission' && system.platform === 'linux';
  return {
    path,
    identity,
    descriptor: facts.descriptor,
    hasReportIds: numbersReports(device, facts.descriptor),
    likeness: [device.vendorId, device.productId, identity.serial, device.interface, identity.transport].join(':'),
    problem: refusal === null ? null : hidProblem(refusal, identity, system.platform),
    rule: hasRule ? udevRule(identity) : null,
  };
}

/** Generic Desktop joystick, gamepad, multi-axis controller (USB-IF HID Usage Tables 1.5, page 1). */
function isPad({ usagePage, usage }: HidDevice): boolean {
  return usagePage === 1 && (usage === 4 || usage === 5 || usage === 8);
}

/** A vendor-defined collection, or one the system does not name, of a pad with a profile. */
function isKnownPad({ vendorId, productId, usagePage }: HidDevice): boolean {
  const open = usagePage === undefined || usagePage === 0 || usagePage >= 0xff00;
  return open && findProfile(vendorId, productId) !== null;
}

function identify(device: HidDevice, facts: HidFacts, platform: NodeJS.Platform): PadIdentity {
  const hex = (id: number): string => id.toString(16).padStart(4, '0');
  return {
    vendorId: device.vendorId,
    productId: device.productId,
    product: device.product?.trim() || `Pad ${hex(device.vendorId)}:${hex(device.productId)}`,
    serial: device.serialNumber?.trim() || null,
    transport: isBluetooth(device, facts, platform) ? 'bluetooth' : 'usb',
  };
}

/** Linux says its bus; the path on Windows holds the service id of Bluetooth's HID; on macOS only USB has interfaces. */
function isBluetooth(device: HidDevice, facts: HidFacts, platform: NodeJS.Platform): boolean {
  if (facts.bus !== null) return facts.bus === 5;
  if (platform === 'win32') return /00001124-0000-1000-8000-00805f9b34fb/i.test(device.path ?? '');
  return platform === 'darwin' && device.interface === -1;
}

/** From the descriptor; where the system gives none, from the profile; else there is nothing to decode anyway. */
function numbersReports(device: HidDevice, descriptor: Uint8Array | null): boolean {
  const parsed = descriptor === null ? null : parseDescriptor(descriptor);
  if (parsed?.ok === true) return parsed.value.hasReportIds;
  return (findProfile(device.vendorId, device.productId)?.report.reportId ?? 0) !== 0;
}
