import { expect, test } from 'vitest';
import { keptRows } from '../../../../renderer/surveys/inputs/kept-inputs.ts';

const button = { pressed: true, released: true, bounceMs: 1.5 };

test('a kept survey names what is missing of each control, in the words of the checklist', () => {
  const rows = keptRows({
    buttons: [
      { usage: 1, ...button },
      { usage: 9, ...button, released: false },
      { usage: 10, pressed: false, released: false, bounceMs: null },
    ],
    hat: [0, 45],
    triggers: {
      left: { min: 0, max: 255, back: 0, fieldMinimum: 0, fieldMaximum: 255 },
      right: { min: 3, max: 120, back: 3, fieldMinimum: 0, fieldMaximum: 255 },
    },
    clicks: { left: 9 },
  });
  expect(rows.map(({ says, missing }) => [says, missing])).toEqual([
    ['button 1', null],
    ['button 9, left stick', 'let go'],
    ['button 10', 'press'],
    ['hat up', null],
    ['hat up-right', null],
    ['left trigger', null],
    ['right trigger', 'pull all the way'],
  ]);
  expect(rows[0]?.bounceMs).toBe(1.5);
  expect(rows.at(-1)).toMatchObject({ extent: { least: 3, greatest: 120 }, field: { minimum: 0, maximum: 255 } });
});

test('a trigger that never came back says so', () => {
  const triggers = { left: { min: 90, max: 255, back: 90, fieldMinimum: 0, fieldMaximum: 255 } };
  expect(keptRows({ buttons: [], hat: null, triggers, clicks: {} })[0]?.missing).toBe('let go');
});
