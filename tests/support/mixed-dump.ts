/** Memory dumps as real ones are: many kinds of content mixed, stretches that stand twice, a bank that mirrors another. */
import type { PadMapping, StickMapping } from '../../core/mapping/mapping.ts';
import { createRandom, type Random } from '../../core/numeric/random.ts';
import { dumpContent } from './dump-content.ts';

interface MixedDump {
  readonly image: Uint8Array;
  /** What a survey shows of sticks that have nothing to do with the dump. */
  readonly measured: PadMapping;
}

/** Counts of the pads that are drawn, by how often: most have 12 bits. */
const BITS = [12, 12, 12, 12, 12, 12, 8, 16] as const;
const KIB = 1024;

/** A dump of 16 to `mostKib` KiB that holds no calibration, and sticks of 8, 12 or 16 bits; of one in four the left stick alone was measured. */
export function makeMixedDump(seed: number, mostKib: number): MixedDump {
  const random = createRandom(seed);
  const image = fillImage(KIB * Math.round(16 * (mostKib / 16) ** random.next()), random);
  const bits = BITS[random.integer(0, BITS.length - 1)] ?? 12;
  const left = makeStick(random, bits);
  return { image, measured: random.next() < 0.25 ? { left } : { left, right: makeStick(random, bits) } };
}

function fillImage(size: number, random: Random): Uint8Array {
  const image = new Uint8Array(size);
  const kinds = Object.values(dumpContent);
  for (let at = 0; at < size;) {
    const end = Math.min(size, at + Math.round(64 * 2 ** (7 * random.next())));
    const from = random.integer(0, Math.max(0, at - 1));
    if (at > 0 && random.next() < 0.15) image.copyWithin(at, from, Math.min(at, from + end - at));
    else kinds[random.integer(0, kinds.length - 1)]?.(image.subarray(at, end), random);
    at = end;
  }
  if (random.next() < 0.2) image.copyWithin(size >> 1, 0, size >> 1);
  return image;
}

/** As parts are: the middle of the scale off by some 2 %, spans of three to nine tenths of a half with some 4 % between them. */
export function makeStick(random: Random, bits: number): StickMapping {
  const half = 2 ** (bits - 1);
  const reach = 0.3 + 0.6 * random.next();
  const axis = (): StickMapping['x'] => {
    const centre = Math.round(half * (1 + 0.02 * random.normal()));
    const span = (): number => Math.min(Math.round(half * reach * (1 + 0.04 * random.normal())), centre - 1);
    return { min: centre - span(), centre, max: Math.min(2 * half - 1, centre + span()) };
  };
  return { x: axis(), y: axis() };
}
