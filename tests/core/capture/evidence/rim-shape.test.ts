import { describe, expect, it } from 'vitest';
import type { Turn } from '../../../../core/capture/evidence/evidence.ts';
import { rimShape } from '../../../../core/capture/evidence/rim-shape.ts';
import { eightBits, polar } from '../guide/hand-script.ts';

function turn(radius: (degrees: number) => number, from = 0, to = 72): Turn {
  return {
    way: 'clockwise',
    startUs: 0,
    endUs: 1,
    points: Array.from({ length: 72 }, (_, k) => (k >= from && k < to ? polar(radius(5 * k), 5 * k) : null)),
    extremes: { xMin: 0, xMax: 1, yMin: 0, yMax: 1 },
  };
}

/** Distance from the origin to a circle about (ex, ey) in a direction. */
function offCircle(radius: number, ex: number, ey: number): (degrees: number) => number {
  return (degrees) => {
    const u = polar(1, degrees);
    const along = u.x * ex + u.y * ey;
    return along + Math.sqrt(radius ** 2 - (ex ** 2 + ey ** 2 - along ** 2));
  };
}

describe('rimShape', () => {
  it('puts the centre where it stands in counts as reported: y grows downwards', () => {
    const { circle, roundness } = rimShape([turn(offCircle(100, 7, 4))], { x: 120, y: 130 }, eightBits);
    expect(circle?.x).toBeCloseTo(127, 8);
    expect(circle?.y).toBeCloseTo(126, 8);
    expect(circle?.radius).toBeCloseTo(100, 8);
    expect(roundness?.minimumZone).toBeCloseTo(0, 6);
  });

  it('turns the ellipse counter-clockwise with y up', () => {
    const along = (30 * Math.PI) / 180;
    const radius = (degrees: number): number => {
      const off = (degrees * Math.PI) / 180 - along;
      return (100 * 80) / Math.hypot(80 * Math.cos(off), 100 * Math.sin(off));
    };
    const { ellipse } = rimShape([turn(radius), turn(radius)], { x: 128, y: 127 }, eightBits);
    expect(ellipse?.angle).toBeCloseTo(30, 6);
    expect(ellipse?.a).toBeCloseTo(100, 6);
    expect(ellipse?.b).toBeCloseTo(80, 6);
    expect(ellipse?.y).toBeCloseTo(127, 6);
  });

  it('states nothing where an angular gap reaches 90°', () => {
    const about = { x: 128, y: 127 };
    expect(rimShape([turn(() => 100, 0, 55)], about, eightBits)).toEqual({
      circle: null,
      ellipse: null,
      roundness: null,
    });
    expect(rimShape([turn(() => 100, 0, 56)], about, eightBits).roundness).not.toBeNull();
    expect(rimShape([], about, eightBits).circle).toBeNull();
  });
});
