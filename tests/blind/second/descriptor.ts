/** Report descriptors of the second hand's pads, byte by byte from the HID standard (1.11, 6.2.2). */
import type { PadPlan } from './pad-plan.ts';

/** Short items: prefix with the size of its data, then the data, least byte first. */
function item(prefix: number, value: number): number[] {
  if (value >= -128 && value <= 127) return [prefix | 1, value & 0xff];
  if (value >= -32_768 && value <= 32_767) return [prefix | 2, value & 0xff, (value >> 8) & 0xff];
  return [prefix | 3, value & 0xff, (value >> 8) & 0xff, (value >> 16) & 0xff, (value >> 24) & 0xff];
}

const usagePage = (page: number): number[] => (page > 0xff ? [0x06, page & 0xff, page >> 8] : [0x05, page]);
const usage = (id: number): number[] => [0x09, id];
const least = (value: number): number[] => item(0x14, value);
const greatest = (value: number): number[] => item(0x24, value);
const fields = (bits: number, count: number): number[] => [0x75, bits, 0x95, count];
const application = (id: number): number[] => [...usage(id), 0xa1, 0x01];
const END = [0xc0];
/** Data, variable, absolute; with a null state; constant. */
const INPUT = [0x81, 0x02];
const INPUT_WITH_NULL = [0x81, 0x42];
const PADDING = [0x81, 0x03];

const DESKTOP = 0x01;
const [X, Y, Z, RX, RY, RZ, HAT, GAME_PAD] = [0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x39, 0x05];
const [SIMULATION, ACCELERATOR, BRAKE, BUTTONS] = [0x02, 0xc4, 0xc5, 0x09];

export interface FieldRange {
  readonly least: number;
  readonly greatest: number;
}

/** All codes of the field; two's complement where it is signed. */
export function fieldRange({ fieldBits, signed }: Pick<PadPlan, 'fieldBits' | 'signed'>): FieldRange {
  const codes = 2 ** fieldBits;
  return signed ? { least: -codes / 2, greatest: codes / 2 - 1 } : { least: 0, greatest: codes - 1 };
}

/** Report 1 with four stick axes, two triggers of 8 bits, a hat and sixteen buttons: the order of `packReport`. */
export function gamePadDescriptor(plan: Pick<PadPlan, 'fieldBits' | 'signed' | 'rightIs'>): Uint8Array {
  const range = fieldRange(plan);
  const [rightX, rightY] = plan.rightIs === 'rotation' ? [RX, RY] : [Z, RZ];
  const triggers =
    plan.rightIs === 'rotation'
      ? [...usagePage(DESKTOP), ...usage(Z), ...usage(RZ)]
      : [...usagePage(SIMULATION), ...usage(BRAKE), ...usage(ACCELERATOR)];
  return Uint8Array.from([
    ...[...usagePage(DESKTOP), ...application(GAME_PAD), 0x85, 0x01],
    ...[...usage(X), ...usage(Y), ...usage(rightX), ...usage(rightY)],
    ...[...least(range.least), ...greatest(range.greatest), ...fields(plan.fieldBits, 4), ...INPUT],
    ...[...triggers, ...least(0), ...greatest(255), ...fields(8, 2), ...INPUT],
    ...[...usagePage(DESKTOP), ...usage(HAT), ...least(0), ...greatest(7), ...fields(4, 1), ...INPUT_WITH_NULL],
    ...[...fields(4, 1), ...PADDING],
    ...[...usagePage(BUTTONS), 0x19, 1, 0x29, 16, ...least(0), ...greatest(1), ...fields(1, 16), ...INPUT],
    ...END,
  ]);
}

/** Report 1 of so many bytes, which only a profile can read. */
export function vendorDescriptor(byteLength: number): Uint8Array {
  return Uint8Array.from([
    ...[...usagePage(0xff00), ...application(0x01), 0x85, 0x01],
    ...[...usage(0x01), ...least(0), ...greatest(255), ...fields(8, byteLength), ...INPUT],
    ...END,
  ]);
}
