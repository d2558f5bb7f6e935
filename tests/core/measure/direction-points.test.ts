import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { directionPoints } from '../../../core/measure/direction-points.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeTurn, type TurnWish } from '../../support/make-evidence.ts';

const about = { x: 2048, y: 2048 };

function turn(way: TurnWish['way'], radius: TurnWish['radius']) {
  return makeTurn({ way, radius }, about, sensorFields);
}

describe('directionPoints', () => {
  it("keeps the median turn's point, of an even number the lower of the two in the middle", () => {
    const odd = [1000, 1010, 1200].map((radius) => turn('clockwise', () => radius));
    expect(directionPoints(odd)[0]?.point?.x).toBe(1010);
    const even = [...odd, turn('clockwise', () => 1100)];
    expect(directionPoints(even)[0]?.point?.x).toBe(1010);
  });

  it('says how well each direction is covered', () => {
    const turns = [
      turn('clockwise', () => 1000),
      turn('clockwise', (degrees) => (degrees < 90 ? 1000 : null)),
      turn('counterClockwise', (degrees) => (degrees < 180 ? 1000 : null)),
      turn('counterClockwise', (degrees) => (degrees < 90 ? 1000 : null)),
    ];
    const states = directionPoints(turns).map(({ state }) => state);
    expect(states.slice(0, 18)).toEqual(Array(18).fill('covered'));
    expect(states.slice(18)).toEqual(Array(54).fill('thin'));
    const none = directionPoints([turn('clockwise', (degrees) => (degrees === 45 ? null : 900))])[9];
    expect(none).toEqual({ angle: 45, point: null, state: 'none', clockwise: [], counterClockwise: [] });
  });

  it('does not depend on the order of the turns', () => {
    const radius = fc.double({ min: 900, max: 1100, noNaN: true });
    fc.assert(
      fc.property(fc.array(radius, { minLength: 1, maxLength: 8 }), fc.nat(), (radii, shift) => {
        const turns = radii.map((one) => turn('clockwise', () => one));
        const moved = turns.map((_, index) => turns[(index + shift) % turns.length]!).reverse();
        const points = (list: typeof turns) => directionPoints(list).map(({ point }) => point);
        expect(points(moved)).toEqual(points(turns));
      }),
      { seed: 81, numRuns: 30 },
    );
  });
});
