import { expect, test } from 'vitest';
import { axisColumn, listAxes } from '../../../renderer/pads/axis-list.ts';
import { smallLayout } from '../support/small-pad.ts';

test('lists the sticks before the triggers, with the words of both ends of the field', () => {
  const axes = listAxes(smallLayout);
  expect(axes.map((axis) => [axis.says, axis.column, axis.lowEnd, axis.highEnd])).toEqual([
    ['left x', 0, 'left', 'right'],
    ['left y', 1, 'up', 'down'],
    ['right trigger', 5, 'released', 'pressed'],
  ]);
});

test('turns the words with the sign of the field', () => {
  const turned = {
    ...smallLayout,
    sticks: {
      right: { x: { minimum: 0, maximum: 9, up: -1 as const }, y: { minimum: 0, maximum: 9, up: 1 as const } },
    },
  };
  const [x, y] = listAxes(turned);
  expect([x?.lowEnd, x?.highEnd]).toEqual(['right', 'left']);
  expect([y?.lowEnd, y?.highEnd]).toEqual(['down', 'up']);
  expect(x?.column).toBe(axisColumn('right', 'x'));
});
