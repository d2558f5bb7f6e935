import { expect, test } from 'vitest';
import { layersTable, readersTable } from '../../../renderer/memory/stored-tables.ts';

const x = { min: 800, centre: 2048, max: 3300 };
const y = { min: 700, centre: 2040, max: 3200 };

test('each layer stands with its marker and what its checksum holds and should be', () => {
  const layer = { layer: 'factory' as const, marker: 'valid' as const, sticks: [] };
  const checksum = { stored: '0102', computed: '0102', good: true };
  const { rows } = layersTable([
    { ...layer, checksum },
    { ...layer, layer: 'user', checksum: { ...checksum, computed: '0304', good: false } },
    { ...layer, marker: 'none', checksum: null },
    { ...layer, marker: 'empty', checksum },
  ]);
  expect(rows).toEqual([
    ['factory', 'valid', 'good'],
    ['user', 'valid', 'wrong: holds 0102, should be 0304'],
    ['factory', 'has no marker', 'has none'],
    ['factory', 'never written', '—'],
  ]);
});

test('each reader stands with the layer that it takes and the range of x that it reads of the stick', () => {
  const hosts = [
    { host: 'cable', layer: 'user' as const, sticks: { left: { x, y } } },
    { host: 'radio', layer: null, sticks: {} },
  ];
  expect(readersTable(hosts, 'left').rows).toEqual([
    ['cable', 'user', '800 … 3300'],
    ['radio', 'none is valid', '—'],
  ]);
  expect(readersTable(hosts, 'right').rows[0]).toEqual(['cable', 'user', '—']);
});
