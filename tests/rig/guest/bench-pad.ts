/** The rig's own pad: its report descriptor and its numbered reports, laid out by hand so that no code under test makes them. */

/**
 * Report 1: X Y Rx Ry 16-bit signed, hat, 14 buttons, then a vendor page: 32-bit number and 8 bytes of the sender's clock.
 * Reports 2 output, 3 input reply, 4 feature: 31 bytes each.
 */
export const BENCH_DESCRIPTOR = [
  '05010905a1018501', // generic desktop, game pad, application collection, report 1
  '16008026ff7f75109502', // -32768 … 32767, two of 16 bits
  '0901a100093009318102c0', // X, Y in a physical collection
  '0901a100093309348102c0', // Rx, Ry
  '0939150025073500463b016514750495018142350045006500', // hat 0 … 7, 0 … 315 degrees, null state
  '750195048103', // 4 bits of padding
  '05091901290e150025017501950e8102', // 14 buttons
  '750195028103', // 2 bits of padding
  '0600ff0920150027ffffff7f752095018102', // vendor page: the number
  '092126ff00750895088102', // the sender's clock
  '85020930951f9102',
  '85030931951f8102',
  '85040932951fb102',
  'c0',
].join('');

/** Id byte, 8 bytes of axes, hat, 2 bytes of buttons, 4 of number, 8 of time. */
export const BENCH_BYTES = 24;
const NUMBER_AT = 12;

export interface BenchValues {
  readonly axes: readonly [number, number, number, number];
  /** 8 is the null state. */
  readonly hat: number;
  readonly buttons: number;
}

/** The values of report number n: scattered over their whole ranges. */
export function benchValues(n: number): BenchValues {
  const signed = (k: number): number => ((scatter(n, k) & 0xffff) << 16) >> 16;
  return {
    axes: [signed(0), signed(1), signed(2), signed(3)],
    hat: scatter(n, 4) % 9,
    buttons: scatter(n, 5) & 0x3fff,
  };
}

function scatter(n: number, k: number): number {
  let x = Math.imul(n * 8 + k + 1, 0x9e3779b1) >>> 0;
  x ^= x >>> 15;
  x = Math.imul(x, 0x85ebca6b) >>> 0;
  return (x ^ (x >>> 13)) >>> 0;
}

/** Writes report n with its id byte; the clock bytes stay 0. */
export function writeBenchReport(n: number, into: Buffer): void {
  const { axes, hat, buttons } = benchValues(n);
  into[0] = 1;
  axes.forEach((value, index) => into.writeInt16LE(value, 1 + 2 * index));
  into[9] = hat;
  into.writeUInt16LE(buttons, 10);
  into.writeUInt32LE(n, NUMBER_AT);
  into.fill(0, NUMBER_AT + 4, BENCH_BYTES);
}
