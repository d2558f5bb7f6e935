/** How a layer is made invalid while its numbers change, so that no pad ever uses half of a change. */
import { readHex } from '../hid/hex.ts';
import { done, type Result } from '../result.ts';
import { checksumLength, checksumOf } from './checksum.ts';
import { regionsOf, type Region } from './map-regions.ts';
import type { ByteRange, Checksum, Marker, MemoryMap } from './memory-map.ts';

interface Sides {
  readonly before: Uint8Array;
  readonly after: Uint8Array;
}

export interface Mask {
  /** The image before with what must be invalid made so; the numbers are untouched. */
  readonly image: Uint8Array;
  /** What the mask overwrote, or what becomes invalid anyway: markers and checksums. */
  readonly regions: readonly Region[];
}

/**
 * A marker that does not say `valid` afterwards is written at once. One that does is taken away meanwhile where its layer's
 * numbers change. A layer without a marker is kept invalid by its checksum, which fits no longer once a number changed; where
 * one of the states in between would fit by chance, a value is stored meanwhile that fits none. `body` are the blocks of
 * numbers in the order of writing, `order` that of `settleOrder`.
 */
export function maskLayers(
  sides: Sides,
  map: MemoryMap,
  order: readonly Region[],
  body: readonly ByteRange[],
): Result<Mask> {
  const image = Uint8Array.from(sides.before);
  const regions: Region[] = [];
  const put = (region: Region, bytes: Uint8Array): void => {
    image.set(bytes, region.offset);
    regions.push(region);
  };
  for (const region of order) {
    const marker = region.role === 'marker' ? map.layers[region.layer]?.marker : null;
    if (marker == null) continue;
    const bytes = meanwhile(marker, sides, changesNumbers(sides, map, region));
    if (!bytes.ok) return bytes;
    if (bytes.value !== null) put(region, bytes.value);
  }
  // A checksum comes after those that it covers, so that what they hold meanwhile is known.
  for (const region of order) {
    const layer = map.layers[region.layer];
    if (region.role !== 'checksum' || layer?.checksum == null || layer.marker !== null) continue;
    const unfit = unfitting(image, sides, layer.checksum, sticksOf(map, region), body);
    if (unfit !== null) put(region, unfit);
  }
  return done({ image, regions });
}

/** What a marker holds meanwhile; null where it stays as it is until all is settled. */
function meanwhile({ offset, valid, empty }: Marker, sides: Sides, isChanging: boolean): Result<Uint8Array | null> {
  const wanted = readHex(valid);
  if (!wanted.ok) return wanted;
  const range = { offset, length: wanted.value.length };
  const [before, after] = [part(sides.before, range), part(sides.after, range)];
  if (!isSame(after, wanted.value)) return done(isSame(before, after) ? null : after);
  if (!isChanging || !isSame(before, wanted.value)) return done(null);
  return empty === null ? done(otherThan(wanted.value)) : readHex(empty);
}

/** Erased bytes, as most memories have them, where they are not the ones that say `valid`. */
function otherThan(valid: Uint8Array): Uint8Array {
  return new Uint8Array(valid.length).fill(valid.every((byte) => byte === 0xff) ? 0 : 0xff);
}

function sticksOf(map: MemoryMap, { layer }: Region): Region[] {
  return regionsOf(map).filter((one) => one.role === 'stick' && one.layer === layer);
}

function changesNumbers({ before, after }: Sides, map: MemoryMap, region: Region): boolean {
  return sticksOf(map, region).some((stick) => !isSame(part(before, stick), part(after, stick)));
}

/** A checksum that fits no state with mixed numbers; null where the one that is stored fits none already. */
function unfitting(
  image: Uint8Array,
  { before, after }: Sides,
  { kind, endian, offset, covers }: Checksum,
  sticks: readonly Region[],
  body: readonly ByteRange[],
): Uint8Array | null {
  const numbers = (from: Uint8Array): string => sticks.map((stick) => part(from, stick).join()).join(';');
  const [old, now] = [numbers(before), numbers(after)];
  const state = Uint8Array.from(image);
  const fitting: Uint8Array[] = [];
  for (const block of body) {
    state.set(part(after, block), block.offset);
    const held = numbers(state);
    if (held !== old && held !== now) fitting.push(checksumOf(kind, endian, part(state, covers)));
  }
  const stored = image.slice(offset, offset + checksumLength(kind));
  const fits = (bytes: Uint8Array): boolean => fitting.some((one) => isSame(one, bytes));
  if (!fits(stored)) return null;
  // Two sticks take 24 bytes at most, so that far fewer than 255 states stand between.
  const [first = 0, ...others] = stored;
  let flip = 1;
  while (fits(Uint8Array.of(first ^ flip, ...others))) flip += 1;
  return Uint8Array.of(first ^ flip, ...others);
}

function part(image: Uint8Array, { offset, length }: ByteRange): Uint8Array {
  return image.subarray(offset, offset + length);
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
