import { expect, test } from 'vitest';
import { changeRows } from '../../../renderer/memory/change-rows.ts';
import { valueRows } from '../../../renderer/memory/value-table.ts';

const axis = { min: 800, centre: 2048, max: 3300 };

test('stored numbers stand beside the measured ones with their difference', () => {
  const rows = valueRows([
    { head: 'measured', mapping: { x: axis, y: axis } },
    { head: 'factory', mapping: { x: { ...axis, max: 3312 }, y: { ...axis, min: 790 } } },
    { head: 'user', mapping: null },
  ]);
  expect(rows.map(({ name }) => name)).toEqual(['x min', 'x centre', 'x max', 'y min', 'y centre', 'y max']);
  expect(rows[2]?.cells.map(({ text, off }) => `${text} ${off}`.trim())).toEqual(['3300', '3312 +12', '—']);
  expect(rows[3]?.cells[1]?.off).toBe('−10');
  expect(rows[1]?.cells[1]?.off).toBe('±0');
});

test('without a measured number nothing is called different', () => {
  const rows = valueRows([
    { head: 'measured', mapping: null },
    { head: 'factory', mapping: { x: axis, y: axis } },
  ]);
  expect(rows.every(({ cells }) => cells[1]?.off === '')).toBe(true);
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
