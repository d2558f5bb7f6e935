import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/numeric/random.ts';
import { checkDescriptor } from '../../support/check-descriptor.ts';
import { goldenDescriptors } from '../../support/golden-descriptors.ts';
import { hexBytes } from '../../support/hid-bytes.ts';
import { mutateDescriptor } from '../../support/mutate-descriptor.ts';

/** `node tests/long/fuzz-descriptors.ts` runs a million of these. */
const COUNT = 3000;
const SEED = 20_250_612;

/** A test of speed this is not: only what would never end fails. */
const MILLIS_BEFORE_HANGING = 120_000;

describe('damaged descriptors', () => {
  it(
    `parse or are refused with a place, and what parses decodes (${String(COUNT)}, seed ${String(SEED)})`,
    () => {
      const random = createRandom(SEED);
      const seeds = goldenDescriptors.map((golden) => hexBytes(golden.descriptorHex));
      const outcomes = new Set<string>();
      for (let run = 0; run < COUNT; run += 1) outcomes.add(checkDescriptor(mutateDescriptor(seeds, random), random));
      // The damage is of use only where it reaches deep into the parser.
      expect([...outcomes]).toEqual(
        expect.arrayContaining([
          'parsed',
          'collection-unclosed',
          'collection-unopened',
          'descriptor-cut',
          'global-item-unknown',
          'logical-range-reversed',
          'pop-without-push',
          'report-id-invalid',
          'report-too-long',
          'usage-range-reversed',
        ]),
      );
    },
    MILLIS_BEFORE_HANGING,
  );

  it(
    'of random bytes alone do so too',
    () => {
      const random = createRandom(SEED + 1);
      for (let run = 0; run < COUNT; run += 1) {
        const bytes = Uint8Array.from({ length: 1 + Math.floor(random.next() * 64) }, () =>
          Math.floor(random.next() * 256),
        );
        expect(() => checkDescriptor(bytes, random)).not.toThrow();
      }
    },
    MILLIS_BEFORE_HANGING,
  );
});
