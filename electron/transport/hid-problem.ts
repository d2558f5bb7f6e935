/** What the HID library's words mean: no permission, busy, gone, or a fault of the exchange. */
import type { PadIdentity } from '../../core/pad/identity.ts';
import type { Problem } from '../../core/result.ts';
import { udevRule } from './udev-rule.ts';

type HidFault = 'pad-no-permission' | 'pad-busy' | 'pad-gone' | 'pad-protocol';

/** The library gives sentences without codes: the system's own words in them are told apart, the first match counts. */
const MEANINGS: readonly (readonly [words: RegExp, fault: HidFault])[] = [
  // Linux; Windows; macOS kIOReturnNotPermitted and kIOReturnNotPrivileged (IOKit, IOReturn.h).
  [/permission denied|access is denied|not permitted|0xe00002e2|0xe00002c1/i, 'pad-no-permission'],
  // Linux EBUSY; Windows sharing violation; macOS kIOReturnExclusiveAccess.
  [/resource busy|being used by another process|exclusive access|0xe00002c5/i, 'pad-busy'],
  // A read that fails is a pad that left: no system gives another reason (measured on Linux: "device disconnected").
  [/no such (file|device)|disconnected|not connected|could not read from hid device|0xe00002c0/i, 'pad-gone'],
];

/** Takes what the library threw or emitted: an Error, or a plain string. */
export function hidFault(thrown: unknown): HidFault {
  const words = wordsOf(thrown);
  return MEANINGS.find(([pattern]) => pattern.test(words))?.[1] ?? 'pad-protocol';
}

/** One sentence: what happened and what to do; on Linux without permission it holds the exact rule. */
export function hidProblem(thrown: unknown, identity: PadIdentity, platform: NodeJS.Platform): Problem {
  const code = hidFault(thrown);
  const { product } = identity;
  switch (code) {
    case 'pad-no-permission':
      return { code, says: noPermissionSays(identity, platform) };
    case 'pad-busy':
      return { code, says: `${product} is in use by another program; close that program and open the pad again.` };
    case 'pad-gone':
      return { code, says: `${product} is no longer there; plug it in again.` };
    case 'pad-protocol':
      return {
        code,
        says: `${product} did not take part as it should ("${wordsOf(thrown)}"); unplug it, plug it in and try again.`,
      };
  }
}

function noPermissionSays(identity: PadIdentity, platform: NodeJS.Platform): string {
  const refused = `This account may not open ${identity.product}`;
  if (platform === 'linux') {
    const rule = udevRule(identity);
    return `${refused}: write the line ${rule.text} into the file ${rule.file}, run ${rule.then}.`;
  }
  if (platform === 'darwin')
    return `${refused}: allow Input Monitoring for this program in the system's privacy settings and start it again.`;
  return `${refused}: close other programs that use it, or ask who looks after this machine.`;
}

function wordsOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
