import { describe, expect, it } from 'vitest';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { limits } from '../../../core/hid/limits.ts';
import { hexBytes, parsed, refused } from '../../support/hid-bytes.ts';

const BYTE = '05 01 15 00 25 7f 75 08 95 01';

/** What is wrong, the bytes, the code and the offset of the item at fault. */
const malformed: readonly (readonly [what: string, hex: string, code: string, at: number])[] = [
  ['an item cut off in its data', '05 01 26 ff', 'descriptor-cut', 2],
  ['a long item cut off in its head', '05 01 fe 01', 'descriptor-cut', 2],
  ['a long item cut off in its data', 'fe 04 00 01 02', 'descriptor-cut', 0],
  ['a collection that is not ended', '05 01 09 05 a1 01 09 01 a1 00 c0', 'collection-unclosed', 4],
  ['an End Collection too many', '05 01 09 05 a1 01 c0 c0', 'collection-unopened', 7],
  ['a Pop without Push', '05 01 b4', 'pop-without-push', 2],
  ['report id 0', '05 01 85 00', 'report-id-invalid', 2],
  ['a report id without data', '84', 'report-id-invalid', 0],
  ['report id 256', '86 00 01', 'report-id-invalid', 0],
  ['a global item of unknown meaning', '05 01 c5 07', 'global-item-unknown', 2],
  ['a logical maximum below a negative minimum', '15 81 25 80 75 08 95 01 81 02', 'logical-range-reversed', 8],
  ['a logical maximum below a positive minimum', '15 05 25 04 75 08 95 01 81 02', 'logical-range-reversed', 8],
  ['a usage range that runs down', '05 09 19 04 29 03', 'usage-range-reversed', 4],
  ['a usage range over two pages', '1b 01 00 09 00 2b 04 00 0a 00', 'usage-range-pages-differ', 5],
  ['a delimited set in a delimited set', 'a9 01 09 30 a9 01', 'delimiter-nested', 4],
  ['a delimiter that closes nothing', '09 30 a9 00', 'delimiter-unopened', 2],
  ['a delimited set still open at a main item', `a9 01 09 30 ${BYTE} 81 02`, 'delimiter-open', 0],
  ['a delimited set still open at the end', '05 01 a9 01 09 30', 'delimiter-open', 2],
  ['a report longer than any transfer', '75 08 97 00 00 01 00 81 03', 'report-too-long', 7],
  ['a huge count of huge elements', '77 ff ff ff ff 97 ff ff ff ff 81 02', 'report-too-long', 10],
  ['no bytes at all', '', 'descriptor-empty', 0],
];

describe('a malformed descriptor', () => {
  it.each(malformed)('with %s is refused with its place', (_what, hex, code, at) => {
    const problem = refused(hex);
    expect(problem).toMatchObject({ code, at });
    expect(problem.says).toMatch(/^[A-Z].*[;:].*\.$|^[A-Z].*\.$/);
  });

  it('is refused at the item where several reports together become too long', () => {
    expect(refused('75 08 96 ff ff 81 03 95 01 81 03')).toMatchObject({ code: 'report-too-long', at: 9 });
  });
});

describe('the limits', () => {
  it('allow the longest descriptor that USB can announce, and no byte more', () => {
    const zeros = new Uint8Array(limits.descriptorBytes + 1);
    expect(parseDescriptor(zeros)).toMatchObject({ ok: false, problem: { code: 'descriptor-too-long' } });
    expect(parseDescriptor(zeros.subarray(1))).toMatchObject({
      ok: false,
      problem: { code: 'items-too-many', at: limits.items },
    });
  });

  it('allow as many items as stated', () => {
    expect(parseDescriptor(new Uint8Array(limits.items)).ok).toBe(true);
  });

  it('allow as many Pushes as stated', () => {
    expect(parsed('a4 '.repeat(limits.stack)).controls).toEqual([]);
    expect(refused('a4 '.repeat(limits.stack + 1))).toMatchObject({ code: 'push-too-deep', at: limits.stack });
  });

  it('allow collections as deep as stated', () => {
    const deep = (levels: number): string => 'a1 00 '.repeat(levels) + 'c0 '.repeat(levels);
    expect(parsed(deep(limits.collectionDepth)).controls).toEqual([]);
    expect(refused(deep(limits.collectionDepth + 1))).toMatchObject({
      code: 'collections-too-many',
      at: 2 * limits.collectionDepth,
    });
  });

  it('allow as many collections as stated', () => {
    expect(refused('a1 00 c0 '.repeat(limits.collections + 1))).toMatchObject({
      code: 'collections-too-many',
      at: 3 * limits.collections,
    });
  });

  it('allow as many alternatives in a delimited set as stated', () => {
    const set = (aliases: number): string => `${BYTE} a9 01 09 30 ${'09 31 '.repeat(aliases)} a9 00 81 02`;
    expect(parsed(set(limits.aliases)).controls[0]?.aliases).toHaveLength(limits.aliases);
    expect(refused(set(limits.aliases + 1))).toMatchObject({ code: 'aliases-too-many', at: 14 + 2 * limits.aliases });
  });

  it('allow as many controls as stated', () => {
    const switches = (count: number): string => `14 25 01 75 01 96 ${hexCount(count)} 81 02`;
    expect(parsed(switches(limits.controls)).controls).toHaveLength(limits.controls);
    expect(refused(switches(limits.controls + 1))).toMatchObject({ code: 'controls-too-many', at: 8 });
  });

  it('allow as many choices and aliases as stated, and count equal lists once', () => {
    const array = (minimum: string): string => `05 0c ${minimum} 2a ff ff 14 27 ff ff 00 00 75 10 95 01 81 00 `;
    expect(parsed(array('19 00').repeat(20)).controls).toHaveLength(20);
    expect(refused(array('19 00'), array('19 01'), array('19 02'))).toMatchObject({ code: 'usages-too-many' });
    const wide = '05 09 14 25 01 75 01 96 00 80 a9 01 1a 00 00 2a ff ff';
    expect(refused(wide, '1a 00 00 2a ff ff '.repeat(5), 'a9 00 81 02')).toMatchObject({ code: 'usages-too-many' });
  });

  it('list long padding as one control that spans it', () => {
    const { controls, reports } = parsed('75 01 97 00 00 07 00 81 03 75 08 95 01 09 30 81 02');
    expect(controls).toHaveLength(2);
    expect(controls[0]).toMatchObject({ constant: true, bitOffset: 0, bitSize: 458_752 });
    expect(controls[1]).toMatchObject({ bitOffset: 458_752, bitSize: 8 });
    expect(reports).toEqual([{ type: 'input', reportId: null, byteLength: 57_345 }]);
  });

  it('list padding of fewer elements one by one', () => {
    expect(parsed('75 02', `96 ${hexCount(limits.paddingElements)}`, '81 03').controls).toHaveLength(
      limits.paddingElements,
    );
  });
});

it('refuses every cut of a real descriptor or reads a shorter one, at every byte', () => {
  const whole = hexBytes('05 01 09 05 a1 01 85 07 09 01 a1 00 09 30 09 31 15 00 26 ff 0f 75 0c 95 02 81 02 c0 c0');
  for (let length = 0; length < whole.length; length += 1) {
    const result = parseDescriptor(whole.subarray(0, length));
    if (result.ok) expect(length, 'only a cut before the first collection leaves nothing open').toBeLessThan(6);
    else expect(result.problem.at).toBeLessThanOrEqual(length);
  }
});

function hexCount(count: number): string {
  return [count & 0xff, count >> 8].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
}
