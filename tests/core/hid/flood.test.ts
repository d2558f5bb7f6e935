import { describe, expect, it } from 'vitest';
import { describeDescriptor } from '../../../core/hid/describe.ts';
import { createReportDescriber } from '../../../core/hid/describe-report.ts';
import { createReadingDecoder } from '../../../core/pad/decode-reading.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import { parsed } from '../../support/hid-bytes.ts';

const PAD = '05 01 09 05 a1 01';

/** A test of speed this is not: only what would never end fails. */
const MILLIS_BEFORE_HANGING = 60_000;

/** Descriptors whose cost would grow with a product of two counts, were their parts not shared: they would never end. */
const floods: readonly (readonly [what: string, descriptor: string])[] = [
  ['30,000 slots of 65,536 keys each', `${PAD} 05 07 19 00 2a ff ff 14 27 ff ff 00 00 75 08 96 30 75 81 00 c0`],
  ['30,000 slots of 65,536 buttons each', `${PAD} 05 09 19 00 2a ff ff 14 27 ff ff 00 00 75 08 96 30 75 81 00 c0`],
  [
    '5,000 arrays of the same 65,536 usages',
    `${PAD} 05 0c 14 27 ff ff 00 00 75 10 95 01 ${'19 00 2a ff ff 81 00 '.repeat(5000)} c0`,
  ],
  ['30,000 buttons', `${PAD} 05 09 19 00 2a ff ff 14 25 01 75 01 96 30 75 81 02 c0`],
  ['30,000 axes', `${PAD} 09 30 09 31 14 26 ff 00 75 08 96 30 75 81 02 c0`],
];

describe.each(floods)('%s', (_what, text) => {
  it(
    'parse, are described, and give a layout and readings',
    () => {
      const descriptor = parsed(text);
      expect(describeDescriptor(descriptor).controls).toHaveLength(descriptor.controls.length);
      const layout = findLayout(descriptor, null);
      const payload = new Uint8Array(descriptor.reports[0]?.byteLength ?? 0);
      expect(createReportDescriber(descriptor).describe(payload).ok).toBe(true);
      expect(createReadingDecoder(layout).read(0, payload, createReadingSlot())).toBe(
        layout.buttons.length > 0 || layout.noSticks === null ? 'reading' : 'other',
      );
    },
    MILLIS_BEFORE_HANGING,
  );
});

it('1,500 delimited sets of two full ranges end', () => {
  const set = 'a9 01 19 00 2a ff ff 1a 00 00 2a ff ff a9 00 95 01 81 02 ';
  const { controls } = parsed('05 09 14 25 01 75 01', set.repeat(1500));
  expect(controls).toHaveLength(1500);
  expect(controls[1499]?.aliases).toEqual([{ usagePage: 9, usage: 0 }]);
});
