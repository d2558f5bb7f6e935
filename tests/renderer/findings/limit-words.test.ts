import { expect, test } from 'vitest';
import { findingIds } from '../../../core/findings/finding.ts';
import { settledLimits } from '../../../core/findings/set-limits.ts';
import { defaultLimits, limitIds } from '../../../core/findings/limits.ts';
import { limitsTable } from '../../../renderer/findings/limits-table.ts';
import { LIMIT_OF, limitName, limitText, readLimit } from '../../../renderer/findings/limit-words.ts';

test('every limit has a name, and every finding knows its own', () => {
  expect(limitIds.filter((id) => limitName(id) === id && id !== 'overshoot' && id !== 'bounce')).toEqual([]);
  expect(findingIds.filter((id) => LIMIT_OF[id] === null)).toEqual([
    'warming-up',
    'odd-release',
    'unpushed-release',
    'several-surveys',
  ]);
});

test('what a field shows is read back as the same value, whatever the unit', () => {
  for (const id of limitIds)
    expect(readLimit(id, limitText(id, defaultLimits[id].value))).toEqual({
      value: expect.closeTo(defaultLimits[id].value, 12) as number,
    });
});

test('shares are written in per cent, with comma or sign as the hand likes', () => {
  expect(limitText('offCentre', 0.035)).toBe('3.5');
  expect(readLimit('offCentre', ' 4,5 % ')).toEqual({ value: 0.045 });
  expect(readLimit('turn', '6°')).toEqual({ value: 6 });
});

test('what cannot be a limit is told', () => {
  for (const wrong of ['', 'three', '0', '-1', '1e9x']) expect(readLimit('seat', wrong)).toHaveProperty('problem');
  expect(readLimit('seat', '101')).toHaveProperty('problem');
  expect(readLimit('releases', '12.5')).toHaveProperty('problem');
});

test('the limits in force stand as a table, with who set them', () => {
  const inForce = settledLimits({ offCentre: 0.05 });
  const { rows } = limitsTable(inForce);
  expect(rows).toHaveLength(limitIds.length);
  const own = rows[limitIds.indexOf('offCentre')];
  expect(own?.slice(1)).toEqual([limitText('offCentre', 0.05), '%', 'yours']);
  expect(own?.[0]).toMatchObject({
    says: limitName('offCentre'),
    definition: expect.stringContaining(defaultLimits.offCentre.source) as string,
  });
  const [id] = limitIds.filter((one) => one !== 'offCentre');
  expect(rows[limitIds.indexOf(id!)]?.[3]).toBe(defaultLimits[id!].from);
});
