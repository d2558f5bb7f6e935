/** What the system says of a HID device beside the library: its report descriptor, its bus, whether it may be opened. */
import { access, constants, readFile } from 'node:fs/promises';
import path from 'node:path';

export interface HidFacts {
  readonly descriptor: Uint8Array | null;
  /** Bus number of Linux (linux/input.h): 3 is USB, 5 Bluetooth; null where it is not told. */
  readonly bus: number | null;
}

export interface HidSystem {
  readonly platform: NodeJS.Platform;
  facts(devicePath: string): Promise<HidFacts>;
  /** What the system throws at whoever opens the device, found without opening it; null where it lets them, or is not asked. */
  refusal(devicePath: string): Promise<unknown>;
}

/** On Linux sysfs and the rights of the node; elsewhere nothing is told. */
export function hidSystem(platform: NodeJS.Platform, sysfs = '/sys/class/hidraw'): HidSystem {
  if (platform !== 'linux')
    return {
      platform,
      facts: () => Promise.resolve({ descriptor: null, bus: null }),
      refusal: () => Promise.resolve(null),
    };
  return {
    platform,
    facts: (devicePath) => readHidraw(path.join(sysfs, path.basename(devicePath), 'device')),
    // Reading alone is not enough: the library opens for reading and writing.
    refusal: (devicePath) => access(devicePath, constants.R_OK | constants.W_OK).then(() => null, keepThrown),
  };
}

async function readHidraw(folder: string): Promise<HidFacts> {
  const descriptor = await readFile(path.join(folder, 'report_descriptor')).catch(keepNothing);
  const uevent = await readFile(path.join(folder, 'uevent'), 'utf8').catch(keepNothing);
  const bus = uevent === null ? null : /^HID_ID=([0-9a-f]{4}):/im.exec(uevent)?.[1];
  return {
    descriptor: descriptor === null ? null : new Uint8Array(descriptor),
    bus: bus == null ? null : Number.parseInt(bus, 16),
  };
}

function keepThrown(thrown: unknown): unknown {
  return thrown;
}

/** A node that vanishes meanwhile, or a system without sysfs: null says that the fact is not known. */
function keepNothing(): null {
  return null;
}
