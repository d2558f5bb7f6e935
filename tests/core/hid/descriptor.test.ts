import { describe, expect, it } from 'vitest';
import type { Control } from '../../../core/hid/control.ts';
import { inputs, parsed } from '../../support/hid-bytes.ts';

/** One 8-bit element on page 1, 0 … 127. */
const BYTE = '05 01 15 00 25 7f 75 08 95 01';

function usagesOf(controls: readonly Control[]): string[] {
  return controls.map(({ usagePage, usage }) => `${String(usagePage)}:${String(usage)}`);
}

describe('usages (HID 1.11, 6.2.2.8)', () => {
  it('gives the elements of a range their usages in order', () => {
    expect(usagesOf(inputs('05 09 19 01 29 04 25 01 75 01 95 04 81 02'))).toEqual(['9:1', '9:2', '9:3', '9:4']);
  });

  it('repeats the last usage where the list is shorter than the count', () => {
    expect(usagesOf(inputs(BYTE, '95 04 09 30 09 31 81 02'))).toEqual(['1:48', '1:49', '1:49', '1:49']);
  });

  it('repeats the end of a range where it is shorter than the count', () => {
    expect(usagesOf(inputs('05 09 19 01 29 02 25 01 75 01 95 04 81 02'))).toEqual(['9:1', '9:2', '9:2', '9:2']);
  });

  it('leaves usages that the count has no room for', () => {
    expect(usagesOf(inputs(BYTE, '09 30 09 31 81 02 09 32 81 02'))).toEqual(['1:48', '1:50']);
  });

  it('mixes single usages and ranges in the order they stand in', () => {
    expect(usagesOf(inputs(BYTE, '95 04 09 35 19 30 29 31 09 36 81 02'))).toEqual(['1:53', '1:48', '1:49', '1:54']);
  });

  it('reads a range whose maximum stands before its minimum', () => {
    expect(usagesOf(inputs('05 09 29 02 19 01 25 01 75 01 95 02 81 02'))).toEqual(['9:1', '9:2']);
  });

  it('passes over a minimum or a maximum that stands alone', () => {
    expect(usagesOf(inputs(BYTE, '19 30 81 02 29 31 81 02'))).toEqual(['1:null', '1:null']);
  });

  it('takes the page of a four-byte usage from its upper half, even where that is 0', () => {
    expect(usagesOf(inputs(BYTE, '95 02 0b 01 00 09 00 0b 30 00 00 00 81 02'))).toEqual(['9:1', '0:48']);
  });

  it('takes the page of a range from whichever end is written in full', () => {
    expect(usagesOf(inputs(BYTE, '95 02 1b 01 00 09 00 29 02 81 02'))).toEqual(['9:1', '9:2']);
    expect(usagesOf(inputs(BYTE, '95 02 19 01 2b 02 00 09 00 81 02'))).toEqual(['9:1', '9:2']);
  });

  it('forgets usages after every main item, collections included', () => {
    expect(usagesOf(inputs('09 05 a1 01', BYTE, '81 02 c0'))).toEqual(['1:null']);
  });

  it('lists a main item without any usage under the page in force', () => {
    expect(usagesOf(inputs('06 00 ff 15 00 25 7f 75 08 95 01 81 02'))).toEqual(['65280:null']);
    expect(usagesOf(inputs('15 00 25 7f 75 08 95 01 81 02'))).toEqual(['0:null']);
  });

  it('passes over designators, strings, unknown locals, reserved and long items', () => {
    const extra = '39 01 49 01 59 02 79 01 89 01 99 02 b9 07 0c 0d 05 fe 02 00 09 31';
    expect(usagesOf(inputs(BYTE, '09 30', extra, '81 02'))).toEqual(['1:48']);
  });
});

describe('usage pages (the page in force at the usage, as Linux reads 6.2.2.8)', () => {
  it('keeps the page that each usage was written under', () => {
    expect(usagesOf(inputs(BYTE, '95 03 09 30 05 02 09 c4 05 01 09 31 81 02'))).toEqual(['1:48', '2:196', '1:49']);
  });

  it('moves the usages before a page that no usage followed', () => {
    expect(usagesOf(inputs(BYTE, '95 02 09 01 09 02 05 09 81 02'))).toEqual(['9:1', '9:2']);
  });

  it('moves only the last ones, back to a usage that already stands on that page', () => {
    expect(usagesOf(inputs(BYTE, '95 03 05 09 09 01 05 01 09 30 09 31 05 09 81 02'))).toEqual(['9:1', '9:48', '9:49']);
  });

  it('moves no usage that names its page itself, and looks past it', () => {
    expect(usagesOf(inputs(BYTE, '95 02 09 01 0b 30 00 01 00 05 09 81 02'))).toEqual(['9:1', '1:48']);
  });

  it('does so for the usage of a collection too', () => {
    expect(inputs('06 00 ff 09 05 05 01 a1 01', BYTE, '09 30 81 02 c0')[0]?.application).toEqual({
      usagePage: 1,
      usage: 5,
    });
  });
});

describe('delimited sets (HUT 1.12, appendix B)', () => {
  it('prefer the first usage and keep the others as aliases', () => {
    const [control] = inputs(BYTE, 'a9 01 09 30 0b c4 00 02 00 09 36 a9 00 81 02');
    expect(control).toMatchObject({
      usagePage: 1,
      usage: 48,
      aliases: [
        { usagePage: 2, usage: 196 },
        { usagePage: 1, usage: 54 },
      ],
    });
  });

  it('give one element each, and the last repeats with its aliases', () => {
    const controls = inputs(BYTE, '95 03 a9 01 09 30 09 33 a9 00 a9 01 09 31 09 34 a9 00 81 02');
    expect(controls.map(({ usage, aliases }) => [usage, aliases[0]?.usage])).toEqual([
      [48, 51],
      [49, 52],
      [49, 52],
    ]);
  });

  it('pair the usages of ranges one by one', () => {
    const controls = inputs('05 09 25 01 75 01 95 03 a9 01 19 01 29 03 1b b0 00 02 00 2b b1 00 02 00 a9 00 81 02');
    expect(controls.map(({ usage, aliases }) => [usage, aliases.map((alias) => alias.usage)])).toEqual([
      [1, [176]],
      [2, [177]],
      [3, []],
    ]);
  });

  it('may be empty', () => {
    expect(usagesOf(inputs(BYTE, 'a9 01 a9 00 09 30 81 02'))).toEqual(['1:48']);
  });

  it('name a collection by the preferred usage', () => {
    const [control] = inputs('05 01 a9 01 09 05 09 04 a9 00 a1 01', BYTE, '09 30 81 02 c0');
    expect(control?.application).toEqual({ usagePage: 1, usage: 5 });
  });
});

describe('ranges', () => {
  const range = (...items: string[]): unknown => {
    const [control] = inputs('05 01 75 20 95 01', ...items, '09 30 81 02');
    return [control?.logicalMinimum, control?.logicalMaximum, control?.signed];
  };

  it('read a maximum unsigned where the minimum is not negative', () => {
    expect(range('15 00 25 ff')).toEqual([0, 255, false]);
    expect(range('15 01 26 ff ff')).toEqual([1, 65_535, false]);
    expect(range('14 27 ff ff ff ff')).toEqual([0, 4_294_967_295, false]);
  });

  it('read it signed where the minimum is negative', () => {
    expect(range('15 81 25 7f')).toEqual([-127, 127, true]);
    expect(range('15 80 25 ff')).toEqual([-128, -1, true]);
    expect(range('17 00 00 00 80 27 ff ff ff 7f')).toEqual([-2_147_483_648, 2_147_483_647, true]);
  });

  it('are the same where the maximum stands first', () => {
    expect(range('25 ff 15 00')).toEqual([0, 255, false]);
    expect(range('15 81 25 ff 15 00')).toEqual([0, 255, false]);
    expect(range('25 7f 15 81')).toEqual([-127, 127, true]);
  });

  it('keep a maximum as it was read, as Linux does, where only the minimum changes after it', () => {
    expect(range('15 00 25 ff 15 81')).toEqual([-127, 255, true]);
  });

  it('read physical limits the same way, with unit and exponent, until they change', () => {
    const controls = inputs(BYTE, '35 00 45 ff 65 14 55 0e 09 30 81 02 09 31 81 02 35 81 45 7f 64 54 09 32 81 02');
    expect(controls.map((one) => [one.physicalMinimum, one.physicalMaximum, one.unit, one.unitExponent])).toEqual([
      [0, 255, 0x14, -2],
      [0, 255, 0x14, -2],
      [-127, 127, 0, 0],
    ]);
  });

  it('are 0 and 0 where the descriptor gives no physical ones', () => {
    expect(inputs(BYTE, '09 30 81 02')[0]).toMatchObject({ physicalMinimum: 0, physicalMaximum: 0, unit: 0 });
  });
});

describe('globals', () => {
  it('come back with Pop, all of them, the report id included', () => {
    const controls = parsed(
      '85 01 05 01 15 00 25 7f 75 08 95 01 a4',
      '85 02 05 09 15 81 35 01 45 02 65 11 55 01 75 10 95 02 19 01 29 02 81 02 b4 09 30 81 02',
    ).controls;
    expect(controls.map((one) => [one.reportId, one.usagePage, one.bitSize, one.logicalMinimum, one.unit])).toEqual([
      [2, 9, 16, -127, 0x11],
      [2, 9, 16, -127, 0x11],
      [1, 1, 8, 0, 0],
    ]);
  });

  it('nest', () => {
    expect(inputs(BYTE, 'a4 75 04 a4 75 02 b4 09 30 81 02 b4 09 31 81 02').map((one) => one.bitSize)).toEqual([4, 8]);
  });
});

describe('reports', () => {
  it('lay elements one after the other, at any bit', () => {
    const controls = inputs('05 01 14 25 01 75 03 95 02 09 30 81 02 75 0d 95 01 09 31 81 02 75 20 09 32 81 02');
    expect(controls.map((one) => [one.bitOffset, one.bitSize])).toEqual([
      [0, 3],
      [3, 3],
      [6, 13],
      [19, 32],
    ]);
    expect(parsed('75 03 95 03 81 03').reports).toEqual([{ type: 'input', reportId: null, byteLength: 2 }]);
  });

  it('are kept apart by type and id, and go on where they were left', () => {
    const descriptor = parsed(BYTE, '85 01 09 30 81 02 85 02 09 31 81 02 91 02 85 01 09 32 81 02 b1 02');
    expect(descriptor.hasReportIds).toBe(true);
    expect(descriptor.reports).toEqual([
      { type: 'input', reportId: 1, byteLength: 2 },
      { type: 'input', reportId: 2, byteLength: 1 },
      { type: 'output', reportId: 2, byteLength: 1 },
      { type: 'feature', reportId: 1, byteLength: 1 },
    ]);
    expect(descriptor.controls.map((one) => [one.type, one.reportId, one.bitOffset, one.usage])).toEqual([
      ['input', 1, 0, 48],
      ['input', 2, 0, 49],
      ['output', 2, 0, null],
      ['input', 1, 8, 50],
      ['feature', 1, 0, null],
    ]);
  });

  it('carry ids type by type, as Linux takes them', () => {
    const descriptor = parsed(BYTE, '09 30 81 02 85 05 09 31 b1 02');
    expect(descriptor.hasReportIds).toBe(false);
    expect(descriptor.controls.map((one) => [one.type, one.reportId])).toEqual([
      ['input', null],
      ['feature', 5],
    ]);
  });

  it('keep id 0 for input that stands before the first id of other input', () => {
    const descriptor = parsed(BYTE, '09 30 81 02 85 05 09 31 81 02');
    expect(descriptor.hasReportIds).toBe(true);
    expect(descriptor.reports.map((one) => one.reportId)).toEqual([0, 5]);
  });

  it('take no bits for elements of size 0 or count 0', () => {
    const none = '75 00 95 05 09 33 81 02 75 08 95 00 09 34 81 02 75 00 95 00 81 03 97 ff ff ff 7f 81 03';
    const controls = inputs(BYTE, '09 30 81 02', none, '75 08 95 01 09 31 81 02');
    expect(controls.map((one) => [one.usage, one.bitOffset])).toEqual([
      [48, 0],
      [49, 8],
    ]);
  });

  it('hold one that has no bits at all with length 0', () => {
    expect(parsed('75 08 95 00 81 02').reports).toEqual([{ type: 'input', reportId: null, byteLength: 0 }]);
  });

  it('may be missing altogether', () => {
    expect(parsed('05 01')).toEqual({ hasReportIds: false, reports: [], controls: [] });
  });
});

describe('main items', () => {
  it('set relative, null state and constant by their bits', () => {
    const flags = (byte: string): unknown => {
      const { relative, hasNull, constant, array } = parsed(BYTE, '09 30 81', byte).controls[0] as Control;
      return { relative, hasNull, constant, array };
    };
    expect(flags('02')).toEqual({ relative: false, hasNull: false, constant: false, array: false });
    expect(flags('46')).toEqual({ relative: true, hasNull: true, constant: false, array: false });
    expect(flags('03')).toEqual({ relative: false, hasNull: false, constant: true, array: false });
    expect(flags('01')).toEqual({ relative: false, hasNull: false, constant: true, array: false });
    expect(flags('00')).toEqual({ relative: false, hasNull: false, constant: false, array: true });
  });

  it('read their flags from any length, none and two bytes included', () => {
    expect(parsed(BYTE, '09 30 80').controls[0]).toMatchObject({ array: true, constant: false });
    expect(parsed(BYTE, '09 30 82 02 01').controls[0]).toMatchObject({ array: false, constant: false });
  });

  it('of unknown tag are passed over, zeros after the last collection included', () => {
    expect(usagesOf(inputs('05 01 09 05 a1 01', BYTE, '09 30 81 02 c0 00 00 00'))).toEqual(['1:48']);
  });
});

describe('collections', () => {
  it('tell the outermost application and the innermost collection', () => {
    const controls = inputs(
      '05 01 09 05 a1 01',
      BYTE,
      '09 30 81 02 09 01 a1 00 09 31 81 02 05 0c 09 01 a1 01 09 32 81 02 c0 c0',
      '09 33 81 02 c0 09 34 81 02',
    );
    expect(controls.map((one) => [one.application?.usage ?? null, one.collection])).toEqual([
      [5, 0],
      [5, 1],
      [5, 2],
      [5, 0],
      [null, null],
    ]);
  });

  it('that are no applications name none', () => {
    expect(inputs('05 01 09 01 a1 00', BYTE, '09 30 81 02 c0')[0]?.application).toBeNull();
  });
});

describe('arrays', () => {
  it('give one control a slot, with its range and what each index selects', () => {
    const slots = inputs('05 07 19 04 29 06 15 01 25 03 75 08 95 02 81 00');
    expect(slots).toHaveLength(2);
    expect(slots[1]).toMatchObject({
      array: true,
      bitOffset: 8,
      usagePage: 7,
      usage: 4,
      usageMinimum: 4,
      usageMaximum: 6,
    });
    expect(slots[1]?.choices).toEqual([4, 5, 6].map((usage) => ({ usagePage: 7, usage })));
    expect(slots[0]?.choices).toBe(slots[1]?.choices);
  });

  it('take listed usages on several pages in order', () => {
    const [slot] = inputs('05 0c 09 e9 09 ea 05 09 09 03 14 25 07 75 04 95 01 81 00');
    expect(slot).toMatchObject({ usagePage: 12, usage: 0xe9, usageMinimum: 0xe9, usageMaximum: 0xea });
    expect(slot?.choices).toEqual([
      { usagePage: 12, usage: 0xe9 },
      { usagePage: 12, usage: 0xea },
      { usagePage: 9, usage: 3 },
    ]);
  });

  it('list no more choices than the logical range has indices', () => {
    const [slot] = inputs('05 0c 19 00 2a ff ff 14 25 0f 75 04 95 01 81 00');
    expect(slot?.choices).toHaveLength(16);
    expect(slot).toMatchObject({ usageMinimum: 0, usageMaximum: 15 });
  });

  it('without usages select nothing', () => {
    expect(inputs(BYTE, '81 00')[0]).toMatchObject({ array: true, usage: null, usageMinimum: null, choices: [] });
  });
});
