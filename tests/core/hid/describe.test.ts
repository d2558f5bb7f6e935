import { describe, expect, it } from 'vitest';
import { describeDescriptor } from '../../../core/hid/describe.ts';
import { goldenDescriptors } from '../../support/golden-descriptors.ts';
import { parsed } from '../../support/hid-bytes.ts';

/** The keys that are fixed, in their order. */
const KEYS = [
  ...['type', 'reportId', 'usagePage', 'usage', 'usageMinimum', 'usageMaximum', 'bitOffset', 'bitSize'],
  ...['logicalMinimum', 'logicalMaximum', 'physicalMinimum', 'physicalMaximum', 'unit', 'unitExponent'],
  ...['signed', 'hasNull', 'relative', 'array', 'constant'],
];

describe('describeDescriptor', () => {
  it('prints one control as the format has it', () => {
    const text = '05 01 09 04 a1 01 85 01 09 30 15 00 26 ff 00 75 08 95 01 81 02 c0';
    expect(describeDescriptor(parsed(text))).toEqual({
      reports: [{ type: 'input', reportId: 1, byteLength: 1 }],
      controls: [
        {
          type: 'input',
          reportId: 1,
          usagePage: 1,
          usage: 48,
          usageMinimum: null,
          usageMaximum: null,
          bitOffset: 0,
          bitSize: 8,
          logicalMinimum: 0,
          logicalMaximum: 255,
          physicalMinimum: 0,
          physicalMaximum: 0,
          unit: 0,
          unitExponent: 0,
          signed: false,
          hasNull: false,
          relative: false,
          array: false,
          constant: false,
          aliases: [],
          application: { usagePage: 1, usage: 4 },
          choices: null,
        },
      ],
    });
  });

  it('lists the choices of an array only where they are more than its range says', () => {
    const slots = '14 25 02 75 08 95 01 81 00';
    const [range] = describeDescriptor(parsed('05 07 19 04 29 06', slots)).controls;
    expect(range).toMatchObject({ usageMinimum: 4, usageMaximum: 6, choices: null });
    const [list] = describeDescriptor(parsed('05 07 09 06 09 04 09 05', slots)).controls;
    expect(list).toMatchObject({ usage: 6, usageMinimum: 4, usageMaximum: 6 });
    expect(list?.choices?.map((choice) => choice.usage)).toEqual([6, 4, 5]);
  });

  it.each(goldenDescriptors)(
    'gives every control of $id the fixed keys first, and nothing that JSON drops',
    (golden) => {
      const description = describeDescriptor(parsed(golden.descriptorHex));
      for (const control of description.controls) expect(Object.keys(control).slice(0, KEYS.length)).toEqual(KEYS);
      expect(JSON.parse(JSON.stringify(description))).toEqual(description);
    },
  );
});
