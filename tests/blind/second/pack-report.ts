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

const HAT_BITS = 4;
const PADDING_BITS = 4;
const BUTTON_BITS = 16;

/** Fields follow each other from the least bit of the first byte on; the sensor pads have no padding behind the hat. */
export function packReport(plan: Pick<PadPlan, 'domain' | 'fieldBits'>, values: ReportValues): Uint8Array {
  const sizes = [
    ...values.axes.map((value) => [value, plan.fieldBits] as const),
    ...values.triggers.map((value) => [value, 8] as const),
    [values.hat, HAT_BITS] as const,
    ...(plan.domain === 'sensor' ? [] : [[0, PADDING_BITS] as const]),
    [values.buttons, BUTTON_BITS] as const,
  ];
  const bits = sizes.reduce((sum, [, size]) => sum + size, 0);
  const bytes = new Uint8Array(Math.ceil(bits / 8));
  let at = 0;
  for (const [value, size] of sizes)
    for (let bit = 0; bit < size; bit += 1, at += 1)
      if ((value >> bit) & 1) bytes[at >> 3] = (bytes[at >> 3] ?? 0) | (1 << (at & 7));
  return bytes;
}
