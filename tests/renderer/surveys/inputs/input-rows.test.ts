import { expect, test } from 'vitest';
import { inputsTable, type InputRow } from '../../../../renderer/surveys/inputs/input-rows.ts';

const row: InputRow = {
  says: 'left trigger',
  down: false,
  pressed: true,
  released: false,
  bounceMs: null,
  extent: { least: 3, greatest: 250 },
  field: { minimum: 0, maximum: 255 },
  missing: 'let go',
};

test('the checklist stands as a table, with the counts that a trigger was seen between', () => {
  const button = { ...row, says: 'button 1', bounceMs: 2, extent: null, field: null, missing: null };
  expect(inputsTable([row, { ...row, extent: null }, button]).rows).toEqual([
    ['left trigger', 'seen', 'not yet', '–', '3 … 250 of 0 … 255', 'let go'],
    ['left trigger', 'seen', 'not yet', '–', '– of 0 … 255', 'let go'],
    ['button 1', 'seen', 'not yet', '2.0', '', 'nothing'],
  ]);
});
