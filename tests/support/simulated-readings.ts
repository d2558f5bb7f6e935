/** Readings of a simulated pad with the times they left it: taken from the report bytes by a bit reader of its own. */
import type { SimulatedPad } from '../../core/simulate/simulated-pad.ts';

export interface SimulatedReading {
  readonly t: number;
  readonly leftX: number;
  readonly leftY: number;
  readonly rightX: number;
  readonly rightY: number;
  readonly buttons: number;
}

/** Bits of a little-endian field, the first bit lowest. */
export function bitsAt(payload: Uint8Array, offset: number, size: number): number {
  let value = 0;
  for (let bit = 0; bit < size; bit += 1) {
    const at = offset + bit;
    value += (((payload[at >> 3] ?? 0) >> (at & 7)) & 1) * 2 ** bit;
  }
  return value;
}

/** Lets the pad live for so many seconds and answers with every reading on the way. */
export function readingsOf(pad: SimulatedPad, seconds: number): SimulatedReading[] {
  const readings: SimulatedReading[] = [];
  pad.advance(pad.nowMicros + Math.round(seconds * 1e6), (t, reportId, payload) => {
    const size = reportId === 1 ? 12 : 8;
    const buttonsAt = reportId === 1 ? 68 : 52;
    readings.push({
      t,
      leftX: bitsAt(payload, 0, size),
      leftY: bitsAt(payload, size, size),
      rightX: bitsAt(payload, 2 * size, size),
      rightY: bitsAt(payload, 3 * size, size),
      buttons: bitsAt(payload, buttonsAt, reportId === 1 ? 16 : 14),
    });
  });
  return readings;
}

/** Mean of one quantity over readings. */
export function meanOf(readings: readonly SimulatedReading[], of: (reading: SimulatedReading) => number): number {
  return readings.reduce((sum, reading) => sum + of(reading), 0) / readings.length;
}
