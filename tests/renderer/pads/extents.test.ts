import { expect, test } from 'vitest';
import { Extents } from '../../../renderer/pads/extents.ts';
import { slotOf } from '../support/small-pad.ts';

test('keeps the least and the greatest count of each column and passes over what the pad does not have', () => {
  const extents = new Extents();
  for (const x of [120, 7, 250]) extents.take(slotOf({ axes: [x, 128], triggers: [x, Number.NaN] }));
  expect([extents.least[0], extents.greatest[0]]).toEqual([7, 250]);
  expect([extents.least[4], extents.greatest[4]]).toEqual([7, 250]);
  expect(extents.least[2]).toBeNaN();
  expect(extents.greatest[5]).toBeNaN();
});

test('forgets what it has seen when it is started again', () => {
  const extents = new Extents();
  extents.take(slotOf({ axes: [3] }));
  extents.startAgain();
  expect(extents.least[0]).toBeNaN();
  extents.take(slotOf({ axes: [9] }));
  expect([extents.least[0], extents.greatest[0]]).toEqual([9, 9]);
});
