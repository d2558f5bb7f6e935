import { describe, expect, it } from 'vitest';
import { countBytes } from '../../../core/image/chance-hits.ts';
import { findCalibration } from '../../../core/image/find-calibration.ts';
import { findPlaces } from '../../../core/image/rank-places.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { missedPlaces } from '../../support/make-dump.ts';
import { leftMapping } from '../../support/make-image.ts';

/** The whole 200 are looked at by tests/long/finder.ts. */
const IMAGES = 50;

describe('findPlaces', () => {
  it(`puts the true place first in at least 98 % of ${IMAGES} images of 512 KiB`, () => {
    const missed = missedPlaces(1, IMAGES);
    expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(IMAGES * 0.02);
  });

  it('finds nothing it would bet on where there is nothing', () => {
    const random = createRandom(9);
    const image = Uint8Array.from({ length: 65_536 }, () => Math.floor(256 * random.next()));
    const [best] = findPlaces(image, { left: leftMapping, right: leftMapping });
    expect(best === undefined || best.expected > 1e-3).toBe(true);
  });
});

describe('findCalibration', () => {
  it('expects about as many hits by chance as even bytes give', () => {
    let found = 0;
    let expected = 0;
    for (let seed = 1; seed <= 4; seed += 1) {
      const random = createRandom(seed);
      const image = Uint8Array.from({ length: 400_000 }, () => Math.floor(256 * random.next()));
      const hits = findCalibration(image, 'left', {
        x: { min: 300, centre: 2048, max: 3800 },
        y: { min: 300, centre: 2048, max: 3800 },
      }).filter(
        ({ codec, furthest }) =>
          codec.form === 'packed12' && codec.order[0] === 'centre' && codec.order[1] === 'below' && furthest <= 520,
      );
      found += hits.length;
      expected += Math.max(0, ...hits.map((hit) => hit.expected));
    }
    // The nearness of spans is counted generously, so that chance is not made to look small: within the same order.
    expect(expected).toBeGreaterThan(found * 0.8);
    expect(expected).toBeLessThan(found * 40);
  });

  it('counts the bytes of an image as shares', () => {
    const shares = countBytes(Uint8Array.of(0, 0, 255, 7));
    expect([shares[0], shares[7], shares[255], shares[1]]).toEqual([0.5, 0.25, 0.25, 0]);
  });
});
