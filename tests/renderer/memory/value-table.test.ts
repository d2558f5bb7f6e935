import { expect, test } from 'vitest';
import { changeRows, changesTable, leftTable, differencesTable } from '../../../renderer/memory/change-rows.ts';
import { valuesTable } from '../../../renderer/memory/value-table.ts';

const axis = { min: 800, centre: 2048, max: 3300 };

test('stored numbers stand beside the measured ones with their difference', () => {
  const { rows } = valuesTable([
    { head: 'measured', mapping: { x: axis, y: axis } },
    { head: 'factory', mapping: { x: { ...axis, max: 3312 }, y: { ...axis, min: 790 } } },
    { head: 'user', mapping: null },
  ]);
  expect(rows.map(([name]) => name)).toEqual(['x min', 'x centre', 'x max', 'y min', 'y centre', 'y max']);
  expect(rows[2]).toEqual([
    'x max',
    { says: '3300', beside: '' },
    { says: '3312', beside: '+12' },
    { says: '—', beside: '' },
  ]);
  expect(rows[3]?.[2]).toEqual({ says: '790', beside: '−10' });
  expect(rows[1]?.[2]).toEqual({ says: '2048', beside: '±0' });
});

test('without a measured number nothing is called different', () => {
  const { rows } = valuesTable([
    { head: 'measured', mapping: null },
    { head: 'factory', mapping: { x: axis, y: axis } },
  ]);
  expect(rows.map((row) => row[2])).toEqual(
    [800, 2048, 3300, 800, 2048, 3300].map((says) => ({ says: String(says), beside: '' })),
  );
});

test('a change of two values in the same bytes is told as two named values with the bytes once', () => {
  const changes = [
    { offset: 0x2c10, old: 'ace556', new: '46e557', means: 'factory left x.max 3500 → 3400; y.max 3400 → 3416' },
    { offset: 0x7640, old: 'ffffffff', new: '6b1ed427', means: 'user marker: valid from now on' },
    { offset: 0x0118, old: '0102', new: '0304', means: 'factory checksum 0102 → 0304' },
  ];
  expect(changeRows(changes)).toEqual([
    { name: 'factory left x.max', old: '3500', new: '3400', bytes: 'ace556 → 46e557', at: '0x2c10' },
    { name: 'factory left y.max', old: '3400', new: '3416', bytes: '', at: '' },
    { name: 'user marker: valid from now on', old: '', new: '', bytes: 'ffffffff → 6b1ed427', at: '0x7640' },
    { name: 'factory checksum', old: '0102', new: '0304', bytes: '0102 → 0304', at: '0x0118' },
  ]);
});

test('changes, what was left of a write and what differs between images stand as tables of their own', () => {
  const change = { offset: 0x2c10, old: 'ac', new: '46', means: 'factory left x.max 3500 → 3400' };
  expect(changesTable([change]).rows).toEqual([['factory left x.max', '3500', '3400', 'ac → 46', '0x2c10']]);
  expect(changesTable([change], true).rows).toEqual([['factory left x.max', '3500', '3400']]);
  expect(leftTable([{ offset: 16, before: 'aa', after: 'bb', now: null, means: null }]).rows).toEqual([
    ['0x0010', 'aa', 'bb', 'not known', ''],
  ]);
  const run = { offset: 32, old: 'aa', new: 'bb', means: null };
  expect(
    differencesTable([
      { ...run, volatile: true },
      { ...run, volatile: false },
    ]).rows,
  ).toEqual([
    ['0x0020', 'changes by itself', 'aa', 'bb'],
    ['0x0020', 'not named by the map', 'aa', 'bb'],
  ]);
});
