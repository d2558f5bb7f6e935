/** What stands in the memory of a simulated pad, packed byte by byte. It shares no code with what reads it. */
import type { StickId } from '../pad/stick.ts';
import type { FirmwareMapping, StoredLayers } from './build.ts';
import { createChance } from './chance.ts';

/** `packed`: 48 KiB, pairs of 12 bits, a user layer with marker and checksum behind it; `words`: 4 KiB, 16-bit words with a checksum. */
export type MemoryKind = 'packed' | 'words';

const SIZES: Readonly<Record<MemoryKind, number>> = { packed: 48 * 1024, words: 4096 };
const ERASED = 0xff;

/** Beside the mappings it holds what looks like a program, its constants and erased stretches, the same for the same seed. */
export function memoryImage(kind: MemoryKind, { factory, user }: StoredLayers, seed: number): Uint8Array {
  const image = new Uint8Array(SIZES[kind]).fill(ERASED);
  const chance = createChance(seed, 31);
  // Erased pages stand between pages in use.
  for (let page = 0; page < image.length; page += 512) {
    if (chance.next() < 0.4) continue;
    for (let at = page; at < page + 512; at += 1) image[at] = Math.floor(256 * chance.next());
  }
  image.set([0x53, 0x57, kind === 'packed' ? 0x0c : 0x0b, 0x01], 0);
  if (kind === 'packed') putPackedLayers(image, { factory, user });
  else putWords(image, { ...factory, ...user });
  return image;
}

function putPackedLayers(image: Uint8Array, { factory, user }: StoredLayers): void {
  putPairs(image, 0x2c10, factory.left);
  putPairs(image, 0x2c30, factory.right);
  image.fill(ERASED, 0x7620, 0x764a);
  if (user === null) return;
  putPairs(image, 0x7620, user.right ?? factory.right);
  putPairs(image, 0x7630, user.left ?? factory.left);
  image.set([0x6b, 0x1e, 0xd4, 0x27], 0x7640);
  const sum = checksum(image.subarray(0x7620, 0x7644), 0);
  image.set([sum >> 8, sum & 0xff], 0x7648);
}

/** The spans below and above the centre, then the centre: x and y each time, two numbers of 12 bits in three bytes. */
function putPairs(image: Uint8Array, offset: number, { x, y }: FirmwareMapping): void {
  const pairs = [
    [x.centre - x.min, y.centre - y.min],
    [x.max - x.centre, y.max - y.centre],
    [x.centre, y.centre],
  ] as const;
  for (const [index, [a, b]] of pairs.entries())
    image.set([a & 0xff, (a >> 8) | ((b & 0x0f) << 4), b >> 4], offset + 3 * index);
}

function putWords(image: Uint8Array, { left, right }: Readonly<Record<StickId, FirmwareMapping>>): void {
  const words = [left, right].flatMap(({ x, y }) => [x.min, x.centre, x.max, y.min, y.centre, y.max]);
  for (const [index, word] of words.entries()) image.set([word & 0xff, word >> 8], 0x0100 + 2 * index);
  const sum = checksum(image.subarray(0x0100, 0x0118));
  image.set([sum & 0xff, sum >> 8], 0x0118);
}

/** What eight steps of the polynomial 0x1021 make of each upper byte. */
const AFTER_EIGHT = Uint16Array.from({ length: 256 }, (_, upper) => {
  let sum = upper << 8;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum & 0x8000) === 0 ? sum << 1 : ((sum << 1) ^ 0x1021) & 0xffff;
  return sum;
});

/** The cyclic checksum of 16 bits with polynomial 0x1021, byte by byte; all bits are set at the start unless told otherwise. */
export function checksum(bytes: Uint8Array, start = 0xffff): number {
  let sum = start;
  for (const byte of bytes) sum = ((sum << 8) & 0xff00) ^ (AFTER_EIGHT[(sum >> 8) ^ byte] ?? 0);
  return sum;
}
