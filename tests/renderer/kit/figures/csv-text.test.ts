import { expect, test } from 'vitest';
import { csvText } from '../../../../renderer/kit/figures/csv-text.ts';

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
