import { expect, it } from 'vitest';
import { mainRest, middleOf, tiltBetween } from '../../../../core/capture/evidence/main-rest.ts';
import { eightBits } from '../guide/hand-script.ts';

it('is the mean of the place that has most others about it', () => {
  const held = [
    { x: 250, y: 127 },
    { x: 10, y: 127 },
  ];
  const rests = [
    { x: 140, y: 120 },
    { x: 142, y: 122 },
    { x: 141, y: 121 },
  ];
  expect(mainRest([...held, ...rests], eightBits)).toEqual({ x: 141, y: 121 });
});

it('is the place nearer the middle where both are alone, and none without places', () => {
  expect(
    mainRest(
      [
        { x: 250, y: 127 },
        { x: 150, y: 127 },
      ],
      eightBits,
    ),
  ).toEqual({ x: 150, y: 127 });
  expect(mainRest([], eightBits)).toBeNull();
});

it('knows the middle of the fields and the tilt between two points', () => {
  expect(middleOf(eightBits)).toEqual({ x: 127.5, y: 127.5 });
  expect(tiltBetween(eightBits, { x: 0, y: 10 }, { x: 127.5, y: 10 })).toBe(1);
});
