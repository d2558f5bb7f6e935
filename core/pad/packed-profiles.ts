/**
 * A family of pads whose full report is vendor-defined: report 48 with two 12-bit values in three bytes for each stick.
 * Layout, start-up exchange and that the counts are those before the stored calibration: seen in the Linux kernel's
 * driver for these numbers (drivers/hid, kernel 6.x), which does the same exchange and applies the calibration itself.
 * There y is negated to grow downwards, so the count as reported grows upwards.
 */
import type { Profile, ProfileField, StartStep } from './profile.ts';

const VENDOR = 0x057e;

const FULL_REPORT = { reportId: 0x30, byteLength: 48 } as const;

/** Three bytes hold x in bits 0 … 11 and y in bits 12 … 23. */
function stickAt(byte: number): { readonly x: ProfileField; readonly y: ProfileField } {
  const field = { bitSize: 12, minimum: 0, maximum: 4095, up: 1 } as const;
  return { x: { bitOffset: byte * 8, ...field }, y: { bitOffset: byte * 8 + 12, ...field } };
}

const LEFT_STICK = stickAt(5);
const RIGHT_STICK = stickAt(8);

/** Three bytes of switches from byte 2 on; button n is bit n − 1 of them. Bits 14 and 15 are not used. */
function buttons(...ranges: readonly (readonly [from: number, to: number])[]): Profile['buttons'] {
  return ranges.flatMap(([from, to]) =>
    Array.from({ length: to - from + 1 }, (_, index) => ({ usage: from + index, bitOffset: 16 + from + index - 1 })),
  );
}

const RIGHT_CLICK = 11;
const LEFT_CLICK = 12;

/** The reply that a command sent over the cable gets: report 129 with the command's number. */
function cableStep(command: string, answered: boolean): StartStep {
  return {
    kind: 'output',
    only: 'usb',
    reportId: 0x80,
    hex: command,
    reply: answered ? { reportId: 0x81, offset: 0, hex: command } : null,
    timeoutMillis: answered ? 1000 : 100,
  };
}

/** Running number, eight bytes of rumble at rest, then command 3 with argument 48: send full reports. */
const SWITCH_ON: StartStep = {
  kind: 'output',
  reportId: 0x01,
  hex: 'nn 00 01 40 40 00 01 40 40 03 30',
  reply: { reportId: 0x21, offset: 13, hex: '03' },
  timeoutMillis: 1000,
};

/** Over the cable: greet, raise the line rate, greet again, stay on the cable (this one is not answered). */
const CABLE_STEPS = [cableStep('02', true), cableStep('03', true), cableStep('02', true), cableStep('04', false)];

export const packedProfiles: readonly Profile[] = [
  {
    id: 'packed-12-bit-both',
    pads: [{ vendorId: VENDOR, productId: 0x2009 }],
    report: FULL_REPORT,
    domain: 'sensor',
    sticks: { left: LEFT_STICK, right: RIGHT_STICK },
    triggers: {},
    buttons: buttons([1, 14], [17, 24]),
    clicks: { left: LEFT_CLICK, right: RIGHT_CLICK },
    start: [...CABLE_STEPS, SWITCH_ON],
  },
  {
    id: 'packed-12-bit-left-half',
    pads: [{ vendorId: VENDOR, productId: 0x2006 }],
    report: FULL_REPORT,
    domain: 'sensor',
    sticks: { left: LEFT_STICK },
    triggers: {},
    buttons: buttons([9, 14], [17, 24]),
    clicks: { left: LEFT_CLICK },
    start: [SWITCH_ON],
  },
  {
    id: 'packed-12-bit-right-half',
    pads: [{ vendorId: VENDOR, productId: 0x2007 }],
    report: FULL_REPORT,
    domain: 'sensor',
    // A pad with one stick has it as the left one.
    sticks: { left: RIGHT_STICK },
    triggers: {},
    buttons: buttons([1, 14]),
    clicks: { left: RIGHT_CLICK },
    start: [SWITCH_ON],
  },
];
