/** Lays the values of one report out as its bytes, without the id. */
import type { PadPlan } from './pad-plan.ts';

export interface ReportValues {
  /** leftX, leftY, rightX, rightY. */
  readonly axes: readonly number[];
  readonly triggers: readonly [number, number];
  /** 0 up, clockwise; 8 for none. */
  readonly hat: number;
  /** Bit n−1 is button n. */
  readonly buttons: number;
}

const TRIGGER_BITS = 8;
const HAT_BITS = 4;
const PADDING_BITS = 4;
const BUTTON_BITS = 16;

/** Fields follow each other from the least bit of the first byte on; the sensor pads have no padding behind the hat. */
export function packReport(plan: Pick<PadPlan, 'domain' | 'fieldBits'>, values: ReportValues): Uint8Array {
  const padding = plan.domain === 'sensor' ? 0 : PADDING_BITS;
  const bits =
    values.axes.length * plan.fieldBits + values.triggers.length * TRIGGER_BITS + HAT_BITS + padding + BUTTON_BITS;
  const bytes = new Uint8Array(Math.ceil(bits / 8));
  let at = 0;
  for (const value of values.axes) at = putBits(bytes, at, value, plan.fieldBits);
  for (const value of values.triggers) at = putBits(bytes, at, value, TRIGGER_BITS);
  at = putBits(bytes, at, values.hat, HAT_BITS) + padding;
  putBits(bytes, at, values.buttons, BUTTON_BITS);
  return bytes;
}

/** Lays the value down from bit `from` on, which is 0 yet, and says where the next one begins. */
function putBits(bytes: Uint8Array, from: number, value: number, size: number): number {
  for (let bit = 0; bit < size; bit += 1) {
    const at = from + bit;
    bytes[at >> 3] = (bytes[at >> 3] ?? 0) | (((value >> bit) & 1) << (at & 7));
  }
  return from + size;
}
