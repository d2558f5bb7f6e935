/** Finds where an image may hold the calibration of a measured stick: for pads whose memory nobody has mapped yet. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickId } from '../pad/stick.ts';
import { chanceOf, countBytes } from './chance-hits.ts';
import { finderCodecs } from './finder-codecs.ts';
import { decodeStick, lengthOf, type StickCodec } from './stick-codec.ts';

export interface CalibrationHit {
  readonly stick: StickId;
  readonly codec: StickCodec;
  readonly offset: number;
  readonly mapping: StickMapping;
  /** Largest difference of one of its six numbers from the measured one, counts. */
  readonly furthest: number;
  /** How many hits as near as this chance alone would give in an image of these bytes. */
  readonly expected: number;
}

/** A number may differ from the measured one by this share of the measured span: the stored part was another one. */
const NEAR_SHARE = 0.15;
/** A longer list helps nobody. */
const MOST_HITS = 2_000;

/**
 * Every place where a codec decodes to min < centre < max with all six numbers near the measured ones. Each codec is tried at
 * every byte. `measured` holds, per axis, the measured extents with the rest as centre.
 */
export function findCalibration(image: Uint8Array, stick: StickId, measured: StickMapping): CalibrationHit[] {
  const counts = countBytes(image);
  const hits = finderCodecs.flatMap((codec) =>
    hitsOf(codec, image, stick, measured).map((hit) => ({
      ...hit,
      expected: (image.length - lengthOf(codec) + 1) * chanceOf(codec, measured, hit.furthest, counts),
    })),
  );
  return hits.sort((a, b) => a.expected - b.expected).slice(0, MOST_HITS);
}

function hitsOf(
  codec: StickCodec,
  image: Uint8Array,
  stick: StickId,
  measured: StickMapping,
): Omit<CalibrationHit, 'expected'>[] {
  const near = {
    x: NEAR_SHARE * (measured.x.max - measured.x.min),
    y: NEAR_SHARE * (measured.y.max - measured.y.min),
  };
  const last = image.length - lengthOf(codec);
  const isWorth = firstNumberTest(codec, image, measured, near);
  const hits: Omit<CalibrationHit, 'expected'>[] = [];
  for (let offset = 0; offset <= last; offset += 1) {
    if (!isWorth(offset)) continue;
    const mapping = decodeStick(codec, image, offset);
    if (mapping === null || mapping.x.min < 0 || mapping.y.min < 0) continue;
    const [x, y] = [furthestOf(mapping.x, measured.x), furthestOf(mapping.y, measured.y)];
    if (x <= near.x && y <= near.y) hits.push({ stick, codec, offset, mapping, furthest: Math.max(x, y) });
  }
  return hits;
}

/** Also refuses by NaN-free order: an axis whose numbers do not grow is as far away as can be. */
function furthestOf(axis: StickMapping['x'], measured: StickMapping['x']): number {
  if (!(axis.min < axis.centre && axis.centre < axis.max)) return Number.POSITIVE_INFINITY;
  return Math.max(
    Math.abs(axis.min - measured.min),
    Math.abs(axis.centre - measured.centre),
    Math.abs(axis.max - measured.max),
  );
}

/** A cheap look at the first number alone: nearly all places of an image end here. */
function firstNumberTest(
  codec: StickCodec,
  image: Uint8Array,
  measured: StickMapping,
  near: { readonly x: number },
): (offset: number) => boolean {
  const { min, centre, max } = measured.x;
  const field = codec.form === 'packed12' ? codec.order[0] : codec.values === 'minCentreMax' ? 'min' : 'centre';
  // A span is off by as much as its edge and its centre together.
  const wanted = { above: max - centre, below: centre - min, centre, min }[field];
  const far = field === 'above' || field === 'below' ? 2 * near.x : near.x;
  const [low, high] = [wanted - far, wanted + far];
  const read = firstNumberReader(codec, image);
  return (offset) => {
    const value = read(offset);
    return value >= low && value <= high;
  };
}

function firstNumberReader(codec: StickCodec, image: Uint8Array): (offset: number) => number {
  if (codec.form === 'packed12') return (at) => (image[at] ?? 0) | (((image[at + 1] ?? 0) & 15) << 8);
  if (codec.bits <= 8) return (at) => image[at] ?? 0;
  return codec.endian === 'little'
    ? (at) => (image[at] ?? 0) | ((image[at + 1] ?? 0) << 8)
    : (at) => ((image[at] ?? 0) << 8) | (image[at + 1] ?? 0);
}
