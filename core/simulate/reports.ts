/** The report descriptors of the simulated pads, and their input reports packed byte by byte. */

/** Everything one report says. Sticks and triggers are whole counts that fit their fields. */
export interface ReportContent {
  readonly leftX: number;
  readonly leftY: number;
  readonly rightX: number;
  readonly rightY: number;
  readonly leftTrigger: number;
  readonly rightTrigger: number;
  /** 0 … 7 clockwise from up, or 8 for nothing pressed. */
  readonly hat: number;
  /** Bit n − 1 is button n. */
  readonly buttons: number;
}

/** One kind of report: how a host is told of it, and how it is packed. */
export interface ReportKind {
  readonly descriptor: Uint8Array;
  /** 0 where the device has no report ids. */
  readonly reportId: number;
  readonly byteLength: number;
  pack(content: ReportContent, into: Uint8Array): void;
}

function bytesOf(hex: string): Uint8Array {
  return Uint8Array.from(hex.trim().split(/\s+/), (pair) => Number.parseInt(pair, 16));
}

/**
 * Report 1, 11 bytes: left x, left y, right x, right y (12 bits each, two in three bytes), left and right trigger
 * (8 bits each), hat (4 bits, 8 = nothing), buttons 1 … 16, four bits of padding.
 */
export const sensorReport: ReportKind = {
  descriptor: bytesOf(`
    05 01 09 05 A1 01 85 01
    09 30 09 31 09 32 09 35 15 00 26 FF 0F 75 0C 95 04 81 02
    05 02 09 C5 09 C4 26 FF 00 75 08 95 02 81 02
    05 01 09 39 25 07 35 00 46 3B 01 65 14 75 04 95 01 81 42
    45 00 65 00 05 09 19 01 29 10 25 01 75 01 95 10 81 02
    75 04 95 01 81 03
    C0`),
  reportId: 1,
  byteLength: 11,
  pack(content, into) {
    packPair(content.leftX, content.leftY, into, 0);
    packPair(content.rightX, content.rightY, into, 3);
    into[6] = content.leftTrigger;
    into[7] = content.rightTrigger;
    into[8] = (content.hat & 0x0f) | ((content.buttons & 0x0f) << 4);
    into[9] = (content.buttons >> 4) & 0xff;
    into[10] = (content.buttons >> 12) & 0x0f;
  },
};

/**
 * No report id, 9 bytes: x, y, z, rz (8 bits each, the sticks), rx, ry (8 bits each, the triggers), hat (4 bits),
 * buttons 1 … 14, six bits of padding.
 */
export const plainReport: ReportKind = {
  descriptor: bytesOf(`
    05 01 09 05 A1 01
    09 30 09 31 09 32 09 35 09 33 09 34 15 00 26 FF 00 75 08 95 06 81 02
    09 39 25 07 35 00 46 3B 01 65 14 75 04 95 01 81 42
    45 00 65 00 05 09 19 01 29 0E 25 01 75 01 95 0E 81 02
    75 06 95 01 81 03
    C0`),
  reportId: 0,
  byteLength: 9,
  pack(content, into) {
    into[0] = content.leftX;
    into[1] = content.leftY;
    into[2] = content.rightX;
    into[3] = content.rightY;
    into[4] = content.leftTrigger;
    into[5] = content.rightTrigger;
    into[6] = (content.hat & 0x0f) | ((content.buttons & 0x0f) << 4);
    into[7] = (content.buttons >> 4) & 0xff;
    into[8] = (content.buttons >> 12) & 0x03;
  },
};

/** Two 12-bit values in three bytes, the low bits of each first. */
function packPair(first: number, second: number, into: Uint8Array, at: number): void {
  into[at] = first & 0xff;
  into[at + 1] = ((first >> 8) & 0x0f) | ((second & 0x0f) << 4);
  into[at + 2] = (second >> 4) & 0xff;
}
