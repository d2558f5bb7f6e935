import { describe, expect, it } from 'vitest';
import { centreUncertainty } from '../../../core/proposal/centre-uncertainty.ts';
import { makeDwell } from '../../support/make-evidence.ts';

const axis = { min: 1000, centre: 2000, max: 3000 };
const edges = { x: axis, y: axis };
const at = (x: number, y: number) => makeDwell({ point: { x, y } });

describe('centreUncertainty', () => {
  const dwells = [at(2000, 2000), at(2000, 1988), at(2030, 2000)];

  it('is half of the central 95 % of what whole releases drawn again give', () => {
    // Drawn with replacement, x is 2000 in 30 % of the draws and 2030 in 3.7 %, each more than 2.5 %: from end to end 30.
    expect(centreUncertainty(dwells, 'mean', edges, 1).u95).toEqual({ x: 15, y: 6 });
    // At its steadiest the centre is the middle of the readings drawn: 2000, 2015 or 2030.
    expect(centreUncertainty(dwells, 'steadiest', edges, 1).u95).toEqual({ x: 15, y: 6 });
  });

  it('says the largest move of the centre when one release is left out', () => {
    // The mean is (2010, 1996); without the third x is 2000, without the second y is 2000.
    expect(centreUncertainty(dwells, 'mean', edges, 1).oneRelease).toEqual({ x: 10, y: 4 });
    // The steadiest is (2015, 1994); without the third x is 2000, without the second y is 2000.
    expect(centreUncertainty(dwells, 'steadiest', edges, 1).oneRelease).toEqual({ x: 15, y: 6 });
  });

  it('is none where every release agrees', () => {
    const same = [at(2000, 2000), at(2000, 2000), at(2000, 2000)];
    expect(centreUncertainty(same, 'mean', edges, 1)).toEqual({ u95: { x: 0, y: 0 }, oneRelease: { x: 0, y: 0 } });
  });

  it('is not known from fewer than three releases, or without a centre', () => {
    const unknown = { u95: null, oneRelease: null };
    expect(centreUncertainty(dwells.slice(0, 2), 'mean', edges, 1)).toEqual(unknown);
    const outside = [at(3400, 2000), at(3400, 2000), at(3400, 2000)];
    expect(centreUncertainty(outside, 'steadiest', edges, 1)).toEqual(unknown);
  });
});
