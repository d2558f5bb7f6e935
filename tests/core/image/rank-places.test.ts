import { describe, expect, it } from 'vitest';
import type { PlaceReading } from '../../../core/image/found-place.ts';
import { findPlaces } from '../../../core/image/rank-places.ts';
import { encodeStick, type StickCodec } from '../../../core/image/stick-codec.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { hideRecord, isOfRecord, rightReading } from '../../support/hidden-record.ts';
import { missedPlaces } from '../../support/make-dump.ts';
import { bothMappings, leftMapping, rightMapping } from '../../support/make-image.ts';
import { makeMixedDump } from '../../support/mixed-dump.ts';

/** The whole 200 are looked at by tests/long/finder.ts. */
const IMAGES = 3;
/** The whole 500 and their 200 records are looked at by tests/long/finder-chance.ts. */
const DUMPS = 60;
const RECORDS = 8;
const KIB = 24;

function seeded(size: number): Uint8Array {
  const random = createRandom(9);
  return Uint8Array.from({ length: size }, () => random.integer(0, 255));
}

/** Seeded bytes with both sticks side by side from 0x1000 on. */
function holding(codec: StickCodec, first = leftMapping, second = rightMapping): Uint8Array {
  const image = seeded(16_384);
  for (const [index, mapping] of [first, second].entries()) {
    const bytes = encodeStick(codec, mapping);
    if (!bytes.ok) throw new Error(bytes.problem.says);
    image.set(bytes.value, 0x1000 + index * bytes.value.length);
  }
  return image;
}

function firstByte(reading: PlaceReading | undefined): number {
  return Math.min(...Object.values(reading?.sticks ?? {}).map(({ offset }) => offset));
}

describe('the chance of a place', () => {
  it(`is below 0.01 in no more than one of a hundred dumps that hold no calibration, of ${DUMPS}`, () => {
    const small = Array.from({ length: DUMPS }, (_, index) => 1 + index).filter((seed) => {
      const { image, measured } = makeMixedDump(seed, KIB);
      return (findPlaces(image, measured)[0]?.chance ?? 1) < 0.01;
    });
    expect(small.length, small.join()).toBeLessThanOrEqual(DUMPS * 0.01);
  });

  it.each([
    ['what stands around tells it', [60, 243, 319, 366]],
    ['other numbers are found as well', [61, 247, 306]],
  ])('is not small in a dump without a calibration where only %s', (_, seeds) => {
    const small = seeds.filter((seed) => {
      const { image, measured } = makeMixedDump(seed, KIB);
      return (findPlaces(image, measured)[0]?.chance ?? 1) < 0.02;
    });
    expect(small).toEqual([]);
  });

  it('is small where a calibration stands, in whatever order its numbers are, and the right reading is among those told', () => {
    for (let seed = 1; seed <= RECORDS; seed += 1) {
      const record = hideRecord(seed, KIB, 'own');
      const [best] = findPlaces(record.image, record.measured);
      expect(best?.chance, `seed ${String(seed)}`).toBeLessThan(0.005);
      expect(best !== undefined && isOfRecord(best, record), `seed ${String(seed)}`).toBe(true);
      expect(best === undefined ? undefined : rightReading(best, record), `seed ${String(seed)}`).toBeDefined();
    }
  });

  it('is the same every time', () => {
    const { image, measured } = hideRecord(3, KIB, 'fitted');
    expect(findPlaces(image, measured)).toEqual(findPlaces(image, measured));
  });

  it('is no smaller for a record that stands a hundred times', () => {
    const once = holding({ form: 'packed12', order: ['below', 'above', 'centre'] });
    const record = once.slice(0x1000, 0x1020);
    const often = Uint8Array.from(once);
    for (let copy = 1; copy <= 100; copy += 1) often.set(record, 0x1000 + 0x20 * copy);
    const chance = (image: Uint8Array): number => findPlaces(image, bothMappings)[0]?.chance ?? 1;
    expect(chance(once)).toBeLessThan(0.002);
    expect(chance(often)).toBeGreaterThanOrEqual(chance(once));
  });

  it('is not small among seeded bytes alone', () => {
    const [best] = findPlaces(seeded(65_536), { left: leftMapping, right: leftMapping });
    expect(best?.chance ?? 1).toBeGreaterThan(0.05);
  });
});

describe('the readings of a place', () => {
  const alike = { x: { min: 850, centre: 2050, max: 3250 }, y: { min: 852, centre: 2052, max: 3252 } };
  const order: readonly ['below', 'above', 'centre'] = ['below', 'above', 'centre'];

  it('are all told where sticks, axes and spans are alike, at one place, with what decides', () => {
    const image = holding({ form: 'packed12', order }, alike, alike);
    const [best] = findPlaces(image, { left: alike, right: alike });
    // Each stick's spans in either order, x or y first, the left stick or the right one first.
    expect(best?.readings).toHaveLength(16);
    expect(new Set(best?.readings.map(({ distance }) => distance))).toEqual(new Set([9, -9]));
    expect(best?.decides).toMatch(
      /^16 readings fit these bytes about equally well and leave open which stick is the left one, which axis is x and which span is above the centre: .*calibrate the left stick alone, then the right one/u,
    );
  });

  it('are all told wherever the bytes stand, however often', () => {
    const record = holding({ form: 'packed12', order }, alike, alike).slice(0x1000, 0x1012);
    const image = seeded(16_384);
    const copies = Array.from({ length: 52 }, (_, copy) => 0x100 * copy);
    for (const at of copies) image.set(record, at);
    const places = findPlaces(image, { left: alike, right: alike });
    const read = new Map(places.map(({ readings }) => [firstByte(readings[0]), readings.length]));
    expect(copies.map((at) => read.get(at))).toEqual(copies.map(() => 16));
  });

  it('are of one layer each where two stand close together; sticks of both come behind', () => {
    const codec = { form: 'words', bits: 16, endian: 'big', values: 'minCentreMax' } as const;
    const [left, right] = [leftMapping, { ...rightMapping, x: { min: 500, centre: 1950, max: 3150 } }];
    const image = holding(codec, left, right);
    image.copyWithin(0x1020, 0x1000, 0x1018);
    const places = findPlaces(image, { left, right }).map(({ readings: [first] }) => [
      first?.sticks.left?.offset,
      first?.sticks.right?.offset,
    ]);
    const layers = [
      [0x1000, 0x100c],
      [0x1020, 0x102c],
    ];
    expect(places.slice(0, 2).toSorted()).toEqual(layers);
    expect(places.slice(2, 4).toSorted()).toEqual([
      [0x1000, 0x102c],
      [0x1020, 0x100c],
    ]);
  });

  it('of sticks of two layers, all alike, are of both sticks moved together alone', () => {
    const image = holding({ form: 'packed12', order }, alike, alike);
    image.copyWithin(0x1030, 0x1000, 0x1012);
    const places = findPlaces(image, { left: alike, right: alike });
    // A stick across the two of one layer, and one across the two of the other, read alike at three offsets.
    expect(places.slice(0, 6).map(({ readings }) => readings.length)).toEqual([16, 16, 48, 48, 16, 16]);
  });

  it('is one where the numbers tell sticks, axes and spans apart', () => {
    const left = { x: { min: 700, centre: 2000, max: 3600 }, y: { min: 900, centre: 2120, max: 3050 } };
    const right = { x: { min: 1050, centre: 2080, max: 3400 }, y: { min: 600, centre: 1950, max: 3000 } };
    const codec = { form: 'packed12', order, axes: 'yx' } as const;
    const [best] = findPlaces(holding(codec, left, right), { left, right });
    expect(best?.readings).toHaveLength(1);
    expect(best?.decides).toBeNull();
    expect(best?.readings[0]?.sticks.left).toEqual({
      stick: 'left',
      codec,
      offset: 0x1000,
      mapping: left,
      furthest: 0,
    });
    expect(best?.readings[0]?.sticks.right).toMatchObject({ offset: 0x1009, mapping: right });
  });

  it('say of one stick alone what it leaves open', () => {
    const image = holding({ form: 'words', bits: 16, endian: 'little', values: 'centreAboveBelow' }, alike, alike);
    const [best] = findPlaces(image, { right: alike });
    expect(best?.decides).toMatch(/calibrate the right stick alone, pushed to every side/u);
  });
});

describe('findPlaces', () => {
  it(`puts the true place first in ${IMAGES} images of 512 KiB`, () => {
    expect(missedPlaces(1, IMAGES)).toEqual([]);
  });

  it('names the other layer, and finds nothing in an image without one', () => {
    const image = holding({ form: 'packed12', order: ['below', 'above', 'centre'] });
    image.copyWithin(0x2000, 0x1000, 0x1012);
    const [first, second] = findPlaces(image, bothMappings);
    expect(new Set([first, second].flatMap((place) => place?.again))).toEqual(new Set([0x1000, 0x2000]));
    expect(findPlaces(new Uint8Array(4096).fill(0xff), bothMappings)).toEqual([]);
  });
});
