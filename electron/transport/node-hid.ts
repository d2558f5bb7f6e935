/** The one file that knows the HID library. Loaded late, so that a machine without its system package still starts. */
import { done, failed, type Result } from '../../core/result.ts';
import type { HidPort } from './hid-port.ts';

type Library = Pick<typeof import('node-hid'), 'HIDAsync' | 'devicesAsync' | 'getHidapiVersion'>;

/** Where the native part cannot be loaded: `hid-missing`, naming the system package. Real pads are then not to be had. */
export async function loadHid(load: () => Promise<Library> = () => import('node-hid')): Promise<Result<HidPort>> {
  try {
    const library = await load();
    // The native part is loaded with the first call, not with the import.
    library.getHidapiVersion();
    return done({
      devices: () => library.devicesAsync(),
      // Without it macOS would take the pad away from every other program.
      open: (path) => library.HIDAsync.open(path, { nonExclusive: true }),
    });
  } catch (thrown) {
    return failed('hid-missing', missingSays(thrown instanceof Error ? thrown.message : String(thrown)));
  }
}

function missingSays(words: string): string {
  const meanwhile = 'until then there are simulated pads and report logs only.';
  const found = PACKAGES.find(([library]) => words.includes(library));
  if (found !== undefined)
    return `Real pads need the system package ${found[1]}: install it (on Debian: apt-get install ${found[1]}) and start again; ${meanwhile}`;
  return `The HID library could not be loaded ("${words}"); install the program anew with npm ci; ${meanwhile}`;
}

/** Shared libraries that the native part asks for, and the Debian package of each. */
const PACKAGES: readonly (readonly [library: string, debianPackage: string])[] = [
  ['libusb-1.0', 'libusb-1.0-0'],
  ['libudev', 'libudev1'],
];
