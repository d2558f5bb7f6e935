import { expect, test } from 'vitest';
import { csvText } from '../../../../renderer/kit/figures/csv-text.ts';
import { drawnCell, numberCell } from '../../../../renderer/kit/figures/table.ts';

const table = { caption: 'Reach', heads: ['direction', 'now'], rows: [['0°', '−5.8\u202f%']], selected: null };

test('a table is saved as CSV with plain signs that a spreadsheet reads', () => {
  expect(csvText([table])).toBe('direction,now\r\n0°,-5.8 %\r\n');
});

test('commas, quotes and line ends are quoted; several tables stand under their captions', () => {
  const odd = { ...table, caption: 'a, b', rows: [['say "so"', '1\n2']] };
  expect(csvText([table, odd])).toBe(
    'Reach\r\ndirection,now\r\n0°,-5.8 %\r\n\r\n"a, b"\r\ndirection,now\r\n"say ""so""","1\n2"\r\n',
  );
});

test('numbers leave at full precision whatever is drawn of them, what is not known empty', () => {
  const third = numberCell(1 / 3, (value) => value.toFixed(2));
  const rows = [
    [third, { ...third, atLeast: true as const }, numberCell(null, String), numberCell(Number.NaN, String)],
  ];
  expect(csvText([{ ...table, rows }])).toBe('direction,now\r\n0.3333333333333333,≥ 0.3333333333333333,,\r\n');
  expect(rows[0]?.map(drawnCell)).toEqual(['0.33', '≥ 0.33', '—', '—']);
});

test('words leave with what goes with them, not with what they mean; heads leave as they are heard', () => {
  const heads = [{ says: 'measure', spoken: true as const }, { says: 'now', tone: 'now' as const }, 'beside'];
  const rows = [
    [
      { says: 'reach', definition: 'how far' },
      { says: '0.9', beside: 'at 45°' },
      { says: '0.9', beside: '' },
    ],
  ];
  expect(csvText([{ ...table, heads, rows }])).toBe('measure,now,beside\r\nreach,0.9 at 45°,0.9\r\n');
});
