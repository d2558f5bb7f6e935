import { describe, expect, it } from 'vitest';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { hidFault, hidProblem } from '../../../electron/transport/hid-problem.ts';
import { udevRule } from '../../../electron/transport/udev-rule.ts';

const identity: PadIdentity = {
  vendorId: 0x0abc,
  productId: 0x00ef,
  product: 'Some pad',
  serial: null,
  transport: 'usb',
};

describe('the words of the HID library', () => {
  // As measured on Linux with the library in use, in a virtual machine; the codes of macOS from its IOReturn.h.
  it.each([
    ['cannot open device with path /dev/hidraw0: Permission denied', 'pad-no-permission'],
    ["EACCES: permission denied, access '/dev/hidraw0'", 'pad-no-permission'],
    [
      'hid_open_path: failed to open IOHIDDevice from mach entry: (0xE00002E2) (iokit/common) not permitted',
      'pad-no-permission',
    ],
    ['cannot open device with path /dev/hidraw0: Device or resource busy', 'pad-busy'],
    ['(0xE00002C5) (iokit/common) exclusive access and device already open', 'pad-busy'],
    ['cannot open device with path /dev/hidraw9: No such file or directory', 'pad-gone'],
    ['could not read from HID device: unexpected poll error (device disconnected)', 'pad-gone'],
    ['Cannot write to hid device: No such device', 'pad-gone'],
    ['ioctl (GFEATURE): Input/output error', 'pad-protocol'],
  ] as const)('%s means %s', (words, fault) => {
    expect(hidFault(new Error(words))).toBe(fault);
    expect(hidFault(words)).toBe(fault);
  });

  it('end in one sentence each that says what to do', () => {
    const says = (words: string, platform: NodeJS.Platform): string => hidProblem(words, identity, platform).says;
    expect(says('Permission denied', 'linux')).toBe(
      'This account may not open Some pad: write the line KERNEL=="hidraw*", SUBSYSTEM=="hidraw", ATTRS{idVendor}=="0abc", ' +
        'ATTRS{idProduct}=="00ef", TAG+="uaccess" into the file /etc/udev/rules.d/70-stickwright-0abc-00ef.rules, ' +
        'run sudo /usr/bin/udevadm control --reload-rules, then unplug the pad and plug it in again.',
    );
    expect(says('not permitted', 'darwin')).toContain('Input Monitoring');
    expect(says('Access is denied', 'win32')).toContain('close other programs');
    expect(says('resource busy', 'linux')).toContain('in use by another program');
    expect(says('odd', 'linux')).toContain('"odd"');
  });
});

describe('the udev rule', () => {
  it('is for this pad alone and for whoever sits at the machine', () => {
    expect(udevRule(identity)).toEqual({
      file: '/etc/udev/rules.d/70-stickwright-0abc-00ef.rules',
      text: 'KERNEL=="hidraw*", SUBSYSTEM=="hidraw", ATTRS{idVendor}=="0abc", ATTRS{idProduct}=="00ef", TAG+="uaccess"',
      then: 'sudo /usr/bin/udevadm control --reload-rules, then unplug the pad and plug it in again',
    });
  });

  it("matches a Bluetooth pad by the kernel's name of it, which is in upper case", () => {
    expect(udevRule({ ...identity, transport: 'bluetooth' }).text).toBe(
      'KERNEL=="hidraw*", SUBSYSTEM=="hidraw", KERNELS=="0005:0ABC:00EF.*", TAG+="uaccess"',
    );
  });
});
