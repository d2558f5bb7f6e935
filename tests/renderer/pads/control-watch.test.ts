import { expect, test } from 'vitest';
import { ControlWatch, type ControlRow } from '../../../renderer/pads/control-watch.ts';
import { controlsTable } from '../../../renderer/pads/controls-table.ts';
import { slotOf, smallLayout } from '../support/small-pad.ts';

function rowOf(watch: ControlWatch, id: string): ControlRow {
  const row = watch.rows().find((one) => one.id === id);
  expect(row).toBeDefined();
  return row!;
}

test('lists every button, the eight hat directions and the triggers there are, and names a stick click', () => {
  const rows = new ControlWatch(smallLayout).rows();
  expect(rows).toHaveLength(40 + 8 + 1);
  expect(rows.find((row) => row.id === 'button-11')?.says).toBe('Button 11, left stick');
  expect(rows.at(-1)?.says).toBe('Right trigger');
});

test('marks buttons beyond the first thirty-two as well', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ down: [32, 33] }));
  watch.take(90_000, slotOf({}));
  expect(rowOf(watch, 'button-33')).toMatchObject({ pressed: true, released: true });
  expect(rowOf(watch, 'button-32')).toMatchObject({ pressed: true, released: true });
  expect(rowOf(watch, 'button-34')).toMatchObject({ pressed: false, released: false });
});

test('a hat direction is released when another one is pressed', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ hat: 0 }));
  watch.take(50_000, slotOf({ hat: 315 }));
  expect(rowOf(watch, 'hat-0')).toMatchObject({ says: 'Hat up', pressed: true, released: true });
  expect(rowOf(watch, 'hat-7')).toMatchObject({ says: 'Hat up-left', pressed: true, released: false, down: true });
});

test('a trigger counts as pressed at nine tenths of its field and as released at one tenth, not between', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ triggers: [Number.NaN, 80] }));
  expect(rowOf(watch, 'trigger-right')).toMatchObject({ pressed: false, value: 80 });
  watch.take(1, slotOf({ triggers: [Number.NaN, 90] }));
  watch.take(2, slotOf({ triggers: [Number.NaN, 50] }));
  expect(rowOf(watch, 'trigger-right')).toMatchObject({ pressed: true, released: false, value: 50 });
  watch.take(3, slotOf({ triggers: [Number.NaN, 10] }));
  expect(rowOf(watch, 'trigger-right')).toMatchObject({ pressed: true, released: true, bounceMillis: null });
});

test('tells the button that was pressed last, until it is forgotten', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ down: [3] }));
  watch.take(1, slotOf({ down: [3, 7] }));
  expect(watch.pressedUsage).toBe(7);
  watch.forgetPress();
  watch.take(2, slotOf({ down: [3] }));
  expect(watch.pressedUsage).toBeNull();
});

test('its version grows with what shows in the list and stands still otherwise', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ axes: [5, 5], triggers: [Number.NaN, 4] }));
  const before = watch.version;
  watch.take(1, slotOf({ axes: [9, 9], triggers: [Number.NaN, 4] }));
  expect(watch.version).toBe(before);
  watch.take(2, slotOf({ axes: [9, 9], triggers: [Number.NaN, 4], down: [1] }));
  expect(watch.version).toBeGreaterThan(before);
});

test('started again, a button that is held counts as pressed and not as released', () => {
  const watch = new ControlWatch(smallLayout);
  watch.take(0, slotOf({ down: [1] }));
  watch.startAgain();
  expect(rowOf(watch, 'button-1')).toMatchObject({ pressed: true, released: false, bounceMillis: null });
});

test('the worklist stands as a table: what was seen, how long it bounced, what it is now', () => {
  const row = {
    id: 'a',
    says: 'Button 1',
    down: true,
    pressed: true,
    released: false,
    bounceMillis: 1.25,
    value: null,
  };
  expect(controlsTable([row, { ...row, down: false, bounceMillis: null, value: 17 }]).rows).toEqual([
    ['Button 1', 'seen', 'not yet', '1.3', 'down'],
    ['Button 1', 'seen', 'not yet', '–', '17'],
  ]);
});
