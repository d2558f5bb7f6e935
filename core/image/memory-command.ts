/** The reports of a memory protocol: a command packed, a reply read. */
import { readHex } from '../hid/hex.ts';
import { checksumLength, checksumOf } from './checksum.ts';
import type { FixedBytes, MemoryProtocol, NumberPlace, ReportChecksum } from './memory-protocol.ts';

export interface MemoryCommand {
  readonly code: number;
  readonly sequence: number;
  readonly address: number;
  /** Bytes to read or to write. */
  readonly length: number;
  /** Bytes to write; none for a command that reads. */
  readonly data: Uint8Array;
}

/**
 * What a report is to the command that waits: its reply with the data; `again` where the pad did nothing and may be asked once
 * more; `damaged` where its checksum or length is wrong; `other` where it echoes another command.
 */
export type MemoryReply =
  | { readonly is: 'good'; readonly data: Uint8Array }
  | { readonly is: 'again' | 'damaged' | 'other' }
  | { readonly is: 'refused'; readonly status: number };

/** The payload of the output report; bytes without a meaning are 0. */
export function packCommand({ command }: MemoryProtocol, ask: MemoryCommand): Uint8Array {
  const payload = new Uint8Array(command.byteLength);
  payload[command.code] = ask.code;
  if (command.sequence !== null) payload[command.sequence] = ask.sequence & 0xff;
  putNumber(payload, command.address, ask.address);
  putNumber(payload, command.length, ask.length);
  payload.set(ask.data, command.data);
  if (command.checksum !== null) payload.set(sumOf(payload, command.checksum), command.checksum.offset);
  return payload;
}

/** Whether a report is one of the protocol's replies at all, by its id and what every reply holds. */
export function isReply({ reply }: MemoryProtocol, reportId: number, payload: Uint8Array): boolean {
  return reportId === reply.reportId && reply.holds.every((fixed) => holdsBytes(payload, fixed));
}

export function readReply({ reply }: MemoryProtocol, payload: Uint8Array, ask: MemoryCommand): MemoryReply {
  if (payload.length < reply.byteLength) return { is: 'damaged' };
  const { checksum } = reply;
  if (checksum !== null && !isEqual(sumOf(payload, checksum), payload.subarray(checksum.offset, sumEnd(checksum))))
    return { is: 'damaged' };
  const isEcho =
    payload[reply.code.offset] === ((ask.code + reply.code.plus) & 0xff) &&
    (reply.sequence === null || payload[reply.sequence] === (ask.sequence & 0xff)) &&
    (reply.address === null || numberAt(payload, reply.address) === ask.address) &&
    (reply.length === null || numberAt(payload, reply.length) === ask.length);
  if (!isEcho) return { is: 'other' };
  const status = payload[reply.status.offset] ?? 0;
  if (reply.status.again.includes(status)) return { is: 'again' };
  if (!reply.status.good.includes(status)) return { is: 'refused', status };
  return { is: 'good', data: payload.slice(reply.data) };
}

/** Whether the bytes stand there. */
export function holdsBytes(payload: Uint8Array, { offset, bytes }: FixedBytes): boolean {
  const wanted = readHex(bytes);
  return wanted.ok && wanted.value.every((byte, index) => payload[offset + index] === byte);
}

function sumOf(payload: Uint8Array, { kind, endian, covers }: ReportChecksum): Uint8Array {
  return checksumOf(kind, endian, payload.subarray(covers.offset, covers.offset + covers.length));
}

function sumEnd({ kind, offset }: ReportChecksum): number {
  return offset + checksumLength(kind);
}

function isEqual(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}

function putNumber(payload: Uint8Array, { offset, length, endian }: NumberPlace, value: number): void {
  for (let index = 0; index < length; index += 1) {
    const at = endian === 'little' ? offset + index : offset + length - 1 - index;
    payload[at] = Math.floor(value / 256 ** index) & 0xff;
  }
}

function numberAt(payload: Uint8Array, { offset, length, endian }: NumberPlace): number {
  let value = 0;
  for (let index = 0; index < length; index += 1) {
    const at = endian === 'little' ? offset + length - 1 - index : offset + index;
    value = value * 256 + (payload[at] ?? 0);
  }
  return value;
}
