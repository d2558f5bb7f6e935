/**
 * The memory of a simulated pad behind its two reports: output report 16 asks, input report 17 answers, 63 bytes each. It
 * holds what was written for as long as it lives; whoever makes it may keep the bytes elsewhere.
 */
import { createChance } from './chance.ts';
import { checksum, type MemoryKind } from './memory-image.ts';

export interface MemoryAnswer {
  readonly afterMicros: number;
  readonly reportId: number;
  readonly payload: Uint8Array;
}

export interface SimulatedMemoryOptions {
  readonly kind: MemoryKind;
  /** Taken as it is: what is written changes it. */
  readonly image: Uint8Array;
  /** Tells the pads of one kind apart. */
  readonly seed: number;
  /** Called after every write. */
  readonly saved?: (image: Uint8Array) => void;
}

const COMMAND_REPORT = 16;
const REPLY_REPORT = 17;
const BYTES = 63;
const SUM_AT = 61;
const STATUS = { good: 0, badSum: 2, unknown: 3, outOfRange: 4 } as const;
const READ_MICROS = 700;
const WRITE_MICROS = 2_500;
const MICROS_A_BYTE = 40;
/** Counts how often the pad was asked; the memory changes there by itself. */
const COUNTER_AT = 0xb000;

/** A collection of the vendor's own page with the two reports, to stand after a pad's other collections. */
export const memoryDescriptor: Uint8Array = Uint8Array.from([
  0x06, 0x00, 0xff, 0x09, 0x10, 0xa1, 0x01, 0x15, 0x00, 0x26, 0xff, 0x00, 0x75, 0x08, 0x95, 0x3f, 0x85, 0x10, 0x09,
  0x10, 0x91, 0x02, 0x85, 0x11, 0x09, 0x11, 0x81, 0x02, 0xc0,
]);

export class SimulatedMemory {
  readonly image: Uint8Array;
  /** Percent. */
  battery = 90;
  readonly #kind: MemoryKind;
  readonly #unit: Uint8Array;
  readonly #saved: (image: Uint8Array) => void;

  constructor({ kind, image, seed, saved = () => undefined }: SimulatedMemoryOptions) {
    const chance = createChance(seed, 37);
    this.image = image;
    this.#kind = kind;
    this.#unit = Uint8Array.from({ length: 8 }, () => Math.floor(256 * chance.next()));
    this.#saved = saved;
  }

  /** Null for a report that is no command. */
  take(reportId: number, payload: Uint8Array): MemoryAnswer | null {
    if (reportId !== COMMAND_REPORT || payload.length < BYTES) return null;
    if (this.#kind === 'packed') this.image[COUNTER_AT] = ((this.image[COUNTER_AT] ?? 0) + 1) & 0xff;
    const byte = (at: number): number => payload[at] ?? 0;
    const [code, length] = [byte(0), byte(5)];
    const address = byte(2) + byte(3) * 256 + byte(4) * 65_536;
    const isWhole = checksum(payload.subarray(0, SUM_AT)) === byte(SUM_AT) + 256 * byte(SUM_AT + 1);
    const data = new Uint8Array(BYTES);
    const status = isWhole ? this.#perform(code, address, length, payload, data) : STATUS.badSum;
    const reply = new Uint8Array(BYTES);
    reply.set([(code + 128) & 0xff, byte(1), status, byte(2), byte(3), byte(4), length]);
    reply.set(data.subarray(0, SUM_AT - 7), 7);
    const sum = checksum(reply.subarray(0, SUM_AT));
    reply.set([sum & 0xff, sum >> 8], SUM_AT);
    const micros = code === 3 ? WRITE_MICROS + MICROS_A_BYTE * length : READ_MICROS;
    return { afterMicros: micros, reportId: REPLY_REPORT, payload: reply };
  }

  #perform(code: number, address: number, length: number, payload: Uint8Array, data: Uint8Array): number {
    switch (code) {
      case 1:
        data.set([0x53, 0x57, this.#kind === 'packed' ? 0x0c : 0x0b, 0x01, ...this.#unit]);
        return STATUS.good;
      case 2:
        if (length > 48 || address + length > this.image.length) return STATUS.outOfRange;
        data.set(this.image.subarray(address, address + length));
        return STATUS.good;
      case 3:
        if (length > 32 || address + length > this.image.length) return STATUS.outOfRange;
        this.image.set(payload.subarray(6, 6 + length), address);
        this.#saved(this.image);
        return STATUS.good;
      case 4:
        data[0] = this.battery;
        return STATUS.good;
      default:
        return STATUS.unknown;
    }
  }
}
