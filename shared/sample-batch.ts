/**
 * The binary batch that carries raw reports from the bench to the screen, decoded there with the same pure function.
 * Little-endian: u32 magic, u32 number of entries, u8 length of the pad handle and its ASCII bytes; then each entry:
 * f64 time in µs, u8 kind (0 report, 1 gap), u8 report id, u16 payload length, payload. A gap's payload is an f64:
 * reports lost, NaN when not known.
 */
import { failed, done, type Result } from '../core/result.ts';

const MAGIC = 0x31425753;
const ENTRY_HEAD = 12;

export interface BatchVisitor {
  report(t: number, reportId: number, payload: Uint8Array): void;
  gap(t: number, lost: number | null): void;
}

/** Collects entries in a growing buffer that is used again after each `take`. */
export class SampleBatchWriter {
  #bytes = new Uint8Array(16_384);
  #view = new DataView(this.#bytes.buffer);
  #used: number;
  #entries = 0;
  readonly #start: number;

  constructor(pad: string) {
    const name = Uint8Array.from(pad, (letter) => letter.charCodeAt(0) & 0x7f);
    this.#view.setUint32(0, MAGIC, true);
    this.#bytes[8] = name.length;
    this.#bytes.set(name, 9);
    this.#start = 9 + name.length;
    this.#used = this.#start;
  }

  get entries(): number {
    return this.#entries;
  }

  report(t: number, reportId: number, payload: Uint8Array): void {
    this.#head(t, 0, reportId, payload.length);
    this.#bytes.set(payload, this.#used);
    this.#used += payload.length;
  }

  gap(t: number, lost: number | null): void {
    this.#head(t, 1, 0, 8);
    this.#view.setFloat64(this.#used, lost ?? Number.NaN, true);
    this.#used += 8;
  }

  /** A copy of exactly the bytes written so far; the writer starts again empty. */
  take(): Uint8Array {
    this.#view.setUint32(4, this.#entries, true);
    const taken = this.#bytes.slice(0, this.#used);
    this.#used = this.#start;
    this.#entries = 0;
    return taken;
  }

  #head(t: number, kind: number, reportId: number, length: number): void {
    this.#reserve(ENTRY_HEAD + length);
    this.#view.setFloat64(this.#used, t, true);
    this.#bytes[this.#used + 8] = kind;
    this.#bytes[this.#used + 9] = reportId;
    this.#view.setUint16(this.#used + 10, length, true);
    this.#used += ENTRY_HEAD;
    this.#entries += 1;
  }

  #reserve(more: number): void {
    if (this.#used + more <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(this.#bytes.length * 2, this.#used + more));
    larger.set(this.#bytes);
    this.#bytes = larger;
    this.#view = new DataView(larger.buffer);
  }
}

/** The handle of the pad that a batch is of, without reading its entries; null for bytes that begin as no batch. */
export function readBatchPad(bytes: Uint8Array): string | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const nameEnd = 9 + (bytes[8] ?? 0);
  if (nameEnd > bytes.length || view.getUint32(0, true) !== MAGIC) return null;
  return String.fromCharCode(...bytes.subarray(9, nameEnd));
}

/** Hands each entry to the visitor in order. Answers with the pad's handle; a damaged batch is a problem with its offset. */
export function readSampleBatch(bytes: Uint8Array, visitor: BatchVisitor): Result<string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 9 || view.getUint32(0, true) !== MAGIC)
    return failed('batch-unknown', 'The sample batch does not begin as one; reload the window.', 0);
  const entries = view.getUint32(4, true);
  const nameEnd = 9 + (bytes[8] ?? 0);
  if (nameEnd > bytes.length) return failed('batch-cut', 'The sample batch ends inside the pad handle.', 9);
  const pad = String.fromCharCode(...bytes.subarray(9, nameEnd));
  let at = nameEnd;
  for (let entry = 0; entry < entries; entry += 1) {
    if (at + ENTRY_HEAD > bytes.length) return failed('batch-cut', 'The sample batch ends inside an entry.', at);
    const t = view.getFloat64(at, true);
    const kind = bytes[at + 8];
    const length = view.getUint16(at + 10, true);
    const from = at + ENTRY_HEAD;
    at = from + length;
    if (at > bytes.length) return failed('batch-cut', 'The sample batch ends inside a payload.', from);
    if (kind === 0) visitor.report(t, bytes[from - 3] ?? 0, bytes.subarray(from, at));
    else {
      const lost = length === 8 ? view.getFloat64(from, true) : Number.NaN;
      visitor.gap(t, Number.isNaN(lost) ? null : lost);
    }
  }
  return done(pad);
}
