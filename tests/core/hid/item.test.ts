import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readItem } from '../../../core/hid/item.ts';
import { fieldFlags, globalTags, localTags, mainTags } from '../../../core/hid/tags.ts';
import { hexBytes, parsed } from '../../support/hid-bytes.ts';

interface PrefixCase {
  readonly hex: string;
  readonly type: string;
  readonly tag: string | number;
  readonly size: number;
  readonly value?: number;
  readonly usage?: number;
  readonly usagePage?: number;
  readonly flags?: { constant: boolean; variable: boolean; relative: boolean; nullState: boolean };
}

/** HID 1.11, 6.2.2.2 to 6.2.2.7; where each number was seen stands in the file. */
const items = JSON.parse(readFileSync(path.join(import.meta.dirname, '../../golden/hid_items.json'), 'utf8')) as {
  prefix: { source: string; cases: PrefixCase[]; tags: Record<string, Record<string, string>> };
  unitExponent: { source: string; table: Record<string, number> };
};

function read(...hex: string[]): ReturnType<typeof readItem> {
  return readItem(hexBytes(...hex), 0);
}

describe(`items (${items.prefix.source})`, () => {
  it.each(items.prefix.cases)('reads $hex as $type $tag of $size bytes', (one) => {
    const item = read(one.hex);
    if (!item.ok) throw new Error(item.problem.says);
    expect(item.value).toMatchObject({ kind: one.type, size: one.size, end: hexBytes(one.hex).length });
    if (one.value !== undefined) expect([item.value.signed, item.value.unsigned]).toContain(one.value);
    if (typeof one.tag === 'number') expect(item.value.tag).toBe(one.tag);
    else expect(item.value.tag).toBe(tagOf(one.type, one.tag));
    if (one.flags !== undefined)
      for (const [flag, set] of Object.entries(one.flags))
        expect((item.value.unsigned & fieldFlags[flag as keyof typeof fieldFlags]) !== 0, flag).toBe(set);
    if (one.usage !== undefined) expect(item.value.unsigned & 0xffff).toBe(one.usage);
    if (one.usagePage !== undefined) expect(item.value.unsigned >>> 16).toBe(one.usagePage);
  });

  it('knows the main, global and usage tags by their published numbers', () => {
    expect(named(items.prefix.tags['main'])).toMatchObject(named(byWords(mainTags)));
    expect(named(items.prefix.tags['global_'])).toEqual(named(byWords(globalTags)));
    expect(named(items.prefix.tags['local'])).toMatchObject(named(byWords(localTags)));
  });

  it('sign-extends from the item’s own size', () => {
    expect(read('15 81')).toMatchObject({ value: { signed: -127, unsigned: 129 } });
    expect(read('16 f8 f8')).toMatchObject({ value: { signed: -1800, unsigned: 63_736 } });
    expect(read('17 ff ff ff ff')).toMatchObject({ value: { signed: -1, unsigned: 4_294_967_295 } });
    expect(read('27 ff ff ff 7f')).toMatchObject({ value: { signed: 2_147_483_647, unsigned: 2_147_483_647 } });
  });

  it('takes only FE as a long item, though other prefixes have the same tag bits', () => {
    expect(read('fe 00 f0')).toMatchObject({ value: { kind: 'long', tag: 0xf0, size: 0, end: 3 } });
    expect(read('fc')).toMatchObject({ value: { kind: 'reserved', size: 0 } });
    expect(read('f1 07')).toMatchObject({ value: { kind: 'main', tag: 0xf0, size: 1, unsigned: 7 } });
  });

  it.each([['26 ff'], ['27 00 00 00'], ['fe'], ['fe 03 a1 aa bb']])('says that %s is cut off', (hex) => {
    expect(read(hex)).toMatchObject({ ok: false, problem: { code: 'descriptor-cut', at: 0 } });
  });
});

describe(`unit exponents (${items.unitExponent.source})`, () => {
  const field = (code: string): string => `05 01 09 30 15 00 25 01 75 08 95 01 55 ${code} 81 02`;

  it.each(Object.entries(items.unitExponent.table))('reads the nibble %s as %i', (nibble, exponent) => {
    expect(parsed(field(Number(nibble).toString(16).padStart(2, '0'))).controls[0]?.unitExponent).toBe(exponent);
  });

  it('believes a plain signed number beyond the nibble', () => {
    expect(parsed(field('f9')).controls[0]?.unitExponent).toBe(-7);
    expect(parsed(field('10')).controls[0]?.unitExponent).toBe(16);
  });
});

function tagOf(kind: string, name: string): number | undefined {
  const table = items.prefix.tags[kind === 'global' ? 'global_' : kind];
  return Number(Object.entries(table ?? {}).find(([, known]) => known === name)?.[0]);
}

/** `{ "0x04": "Usage Page" }` as `{ usagepage: 4 }`. */
function named(table: Record<string, string> = {}): Record<string, number> {
  return Object.fromEntries(
    Object.entries(table).map(([tag, name]) => [name.replaceAll(' ', '').toLowerCase(), Number(tag)]),
  );
}

function byWords(tags: Readonly<Record<string, number>>): Record<string, string> {
  return Object.fromEntries(Object.entries(tags).map(([name, tag]) => [String(tag), name]));
}
