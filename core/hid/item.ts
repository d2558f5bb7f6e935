/** Cuts a report descriptor into items (HID 1.11, 6.2.2.2 and 6.2.2.3). */
import { done, failed, type Result } from '../result.ts';

export interface Item {
  /** Byte offset of the prefix. */
  readonly at: number;
  readonly kind: 'main' | 'global' | 'local' | 'reserved' | 'long';
  /** The prefix without its size bits for a short item, e.g. 0x04 for Usage Page; the long item's own tag otherwise. */
  readonly tag: number;
  /** Bytes of data: 0, 1, 2 or 4 for a short item, 0 … 255 for a long one. */
  readonly size: number;
  /** The data as an unsigned number, little-endian; 0 without data and for a long item. */
  readonly unsigned: number;
  /** The data sign-extended from their own size. */
  readonly signed: number;
  /** Offset of the first byte after the item. */
  readonly end: number;
}

const LONG_PREFIX = 0xfe;
const KINDS = ['main', 'global', 'local', 'reserved'] as const;

/**
 * Reads the item whose prefix stands at `at`, which lies within the bytes. No long item has a meaning yet: its data
 * are skipped whole. Problem: `descriptor-cut` where the bytes end before the item does.
 */
export function readItem(bytes: Uint8Array, at: number): Result<Item> {
  const prefix = bytes[at] ?? 0;
  if (prefix === LONG_PREFIX) {
    const size = bytes[at + 1] ?? 0;
    const end = at + 3 + size;
    if (end > bytes.length) return cut(at);
    return done({ at, kind: 'long', tag: bytes[at + 2] ?? 0, size, unsigned: 0, signed: 0, end });
  }
  const size = (prefix & 3) === 3 ? 4 : prefix & 3;
  const end = at + 1 + size;
  if (end > bytes.length) return cut(at);
  let unsigned = 0;
  for (let index = end - 1; index > at; index -= 1) unsigned = unsigned * 256 + (bytes[index] ?? 0);
  const half = 2 ** (8 * size - 1);
  return done({
    at,
    kind: KINDS[(prefix >> 2) & 3] ?? 'reserved',
    tag: prefix & 0xfc,
    size,
    unsigned,
    signed: size > 0 && unsigned >= half ? unsigned - 2 * half : unsigned,
    end,
  });
}

function cut(at: number): ReturnType<typeof failed> {
  return failed('descriptor-cut', `The descriptor ends inside the item at byte ${at}; read it again in full.`, at);
}
