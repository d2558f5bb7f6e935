/** The fast path of the reader: a canonical report line parsed straight from bytes, without text and without a new buffer. */
import { digitOf } from '../hid/hex.ts';

const COMMA = 0x2c;
const QUOTE = 0x22;
const CLOSE = 0x5d;
const HEAD = Uint8Array.from('["r",', (letter) => letter.charCodeAt(0));
/** Value of each hex digit by its byte; 256 for a byte that is none, so that one test of the sum finds it. */
const NIBBLE = Uint16Array.from({ length: 256 }, (_, code) => (digitOf(code) < 0 ? 256 : digitOf(code)));

/** Holds the last report line that was read; `bytes` is a view that the next line overwrites. */
export class ReportLine {
  t = 0;
  reportId = 0;
  bytes = new Uint8Array(0);
  #buffer = new Uint8Array(64);
  /** One view for each payload length, so that a line makes no garbage. */
  #views: (Uint8Array<ArrayBuffer> | undefined)[] = [];
  #at = 0;

  /** Reads `["r",t,id,"hex"]` from `from` up to `to`; false for anything written otherwise, which JSON then decides on. */
  read(line: Uint8Array, from: number, to: number): boolean {
    for (let i = 0; i < HEAD.length; i += 1) if (line[from + i] !== HEAD[i]) return false;
    this.#at = from + HEAD.length;
    const t = this.#number(line, 15);
    if (t < 0 || line[this.#at] !== COMMA) return false;
    this.#at += 1;
    const reportId = this.#number(line, 3);
    if (reportId < 0 || reportId > 255 || line[this.#at] !== COMMA || line[this.#at + 1] !== QUOTE) return false;
    const digits = to - 2 - (this.#at + 2);
    if (digits < 0 || (digits & 1) === 1 || line[to - 2] !== QUOTE || line[to - 1] !== CLOSE) return false;
    if (!this.#payload(line, this.#at + 2, digits >> 1)) return false;
    this.t = t;
    this.reportId = reportId;
    return true;
  }

  /** A whole number as JSON writes it, of at most `most` digits; −1 for none. */
  #number(line: Uint8Array, most: number): number {
    const from = this.#at;
    let value = 0;
    let at = from;
    for (; at - from <= most; at += 1) {
      const digit = (line[at] ?? 0) - 0x30;
      if (digit < 0 || digit > 9) break;
      value = value * 10 + digit;
    }
    this.#at = at;
    const digits = at - from;
    return digits === 0 || digits > most || (digits > 1 && line[from] === 0x30) ? -1 : value;
  }

  #payload(line: Uint8Array, from: number, length: number): boolean {
    if (length > this.#buffer.length) {
      this.#buffer = new Uint8Array(length * 2);
      this.#views = [];
    }
    const buffer = this.#buffer;
    let at = from;
    for (let i = 0; i < length; i += 1) {
      const byte = ((NIBBLE[line[at] ?? 0] ?? 256) << 4) + (NIBBLE[line[at + 1] ?? 0] ?? 256);
      if (byte > 255) return false;
      buffer[i] = byte;
      at += 2;
    }
    this.bytes = this.#views[length] ??= buffer.subarray(0, length);
    return true;
  }
}
