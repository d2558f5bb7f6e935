import { describe, expect, it } from 'vitest';
import type { RestMeasure } from '../../../core/measure/rest-measure.ts';
import { offsetUncertainty } from '../../../renderer/workbench/offset-uncertainty.ts';
import { mapping, standUnder, wholeStick } from '../support/bench-stick.ts';

function rest(part: Partial<RestMeasure>): RestMeasure {
  const measured = standUnder(wholeStick()).rest;
  if (measured === null) throw new Error('The stick has a rest.');
  return { ...measured, ...part };
}

describe('offsetUncertainty', () => {
  it('is the axis part alone where the offset lies along that axis', () => {
    const alongX = rest({
      point: { x: 2040, y: 2000 },
      u95: { x: 6, y: 50 },
      offset: { x: 0.04, y: 0, magnitude: 0.04, largest: 0.05 },
    });
    expect(offsetUncertainty(alongX, mapping)).toBeCloseTo(0.006, 12);
  });

  it('takes the span on the side where the rest lies', () => {
    const narrow = { ...mapping, x: { min: 1500, centre: 2000, max: 3000 } };
    const left = rest({
      point: { x: 1980, y: 2000 },
      u95: { x: 5, y: 0 },
      offset: { x: -0.04, y: 0, magnitude: 0.04, largest: 0.05 },
    });
    expect(offsetUncertainty(left, narrow)).toBeCloseTo(0.01, 12);
  });

  it('takes the larger part where there is no offset', () => {
    const none = rest({
      point: { x: 2000, y: 2000 },
      u95: { x: 3, y: 7 },
      offset: { x: 0, y: 0, magnitude: 0, largest: 0 },
    });
    expect(offsetUncertainty(none, mapping)).toBeCloseTo(0.007, 12);
  });

  it('cannot be stated without the uncertainty of the rest point', () => {
    expect(offsetUncertainty(rest({ u95: { x: null, y: null } }), mapping)).toBeNull();
  });
});
