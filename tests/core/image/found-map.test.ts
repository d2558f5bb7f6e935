import { describe, expect, it } from 'vitest';
import { writeCautions } from '../../../core/image/cautions.ts';
import { foundMap, type FoundMapWish } from '../../../core/image/found-map.ts';
import { encodeStick, type StickCodec } from '../../../core/image/stick-codec.ts';
import type { AxisMapping } from '../../../core/mapping/mapping.ts';

const words: StickCodec = { form: 'words', bits: 16, endian: 'little', values: 'minCentreMax', axes: 'yx' };

/** A map of one stick at byte 8 of an image that holds it there. */
function mapOf(x: AxisMapping, codec = words, readings: FoundMapWish['readings'] = { factory: 1 }) {
  const bytes = encodeStick(codec, { x, y: x });
  if (!bytes.ok) throw new Error(bytes.problem.says);
  const image = new Uint8Array(64);
  image.set(bytes.value, 8);
  const layers = { factory: { left: { offset: 8, codec } } };
  return foundMap({ id: 'found', name: 'Found', layers, readings }, image);
}

describe('a map of found places', () => {
  it.each([
    [{ min: 800, centre: 2048, max: 3300 }, words, { bits: 12, leastSpan: 256 }],
    [{ min: 6000, centre: 32_000, max: 58_000 }, words, { bits: 16, leastSpan: 4096 }],
    [{ min: 4000, centre: 8100, max: 12_300 }, words, { bits: 14, leastSpan: 1024 }],
    [{ min: 310, centre: 512, max: 730 }, words, { bits: 10, leastSpan: 64 }],
    [{ min: 40, centre: 128, max: 210 }, { ...words, bits: 8 } as const, { bits: 8, leastSpan: 16 }],
  ])('takes the bits of its counts from the numbers that stand there: %j', (axis, codec, plausible) => {
    expect(mapOf(axis, codec)).toMatchObject({ ok: true, value: { size: 64, proof: 'unproven', plausible } });
  });

  // Whatever three rising numbers of 16 bits would be let through by bits and a span of 16 counts.
  it.each([
    [{ min: 30_000, centre: 33_000, max: 36_000 }],
    [{ min: 9000, centre: 9100, max: 9200 }],
    [{ min: 100, centre: 5000, max: 60_000 }],
    [{ min: 61_000, centre: 63_000, max: 65_000 }],
  ])('is none where the numbers cannot be those of a stick: %j', (axis) => {
    const map = mapOf(axis);
    expect(map).toMatchObject({ ok: false, problem: { code: 'found-implausible' } });
    expect(map.ok ? '' : map.problem.says).toMatch(/^The factory layer’s left stick is no calibration: x would be /u);
  });

  it('is none beyond the image, and none of which is not said how many readings it was chosen from', () => {
    const layers = { user: { right: { offset: 60, codec: words } } };
    const beyond = foundMap({ id: 'found', name: 'Found', layers, readings: { user: 1 } }, new Uint8Array(64));
    expect(beyond).toMatchObject({ ok: false, problem: { code: 'found-implausible' } });
    expect(mapOf({ min: 800, centre: 2048, max: 3300 }, words, {})).toMatchObject({
      ok: false,
      problem: { code: 'found-reading' },
    });
  });

  it('says where it was chosen out of several readings, also before a write', () => {
    const axis = { min: 800, centre: 2048, max: 3300 };
    const [one, four] = [mapOf(axis), mapOf(axis, words, { factory: 4 })];
    if (!one.ok || !four.ok) throw new Error('No map.');
    expect(one.value.chosenFrom).toBeUndefined();
    expect(four.value.chosenFrom).toBe(4);
    expect(writeCautions(one.value).filter((says) => says.includes('readings'))).toEqual([]);
    expect(writeCautions(four.value)[1]).toMatch(
      /^It was chosen out of 4 readings .* exchanges sticks, axes or spans\.$/u,
    );
    expect(writeCautions({ ...four.value, proof: 'proven' }).filter((says) => says.includes('readings'))).toEqual([]);
  });
});
