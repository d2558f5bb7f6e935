import { describe, expect, it } from 'vitest';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { planeInput, profileInput, railsInput } from '../../../renderer/workbench/figure-inputs.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';
import { clippedStick, eightBits, mapping, oneRelease, standUnder, wholeStick, zone } from '../support/bench-stick.ts';

describe('profileInput', () => {
  it('has 72 directions, with a state and without a reach where nothing was covered', () => {
    const input = profileInput([standUnder(oneRelease())], 'sensor');
    expect(input.states).toHaveLength(72);
    expect(input.states[20]).toBe('none');
    expect(input.series[0]?.reach[20]).toBeNull();
    expect(input.series[0]?.reach[0]).not.toBeNull();
  });

  it('has no onset at all without a rest', () => {
    const evidence = makeEvidence({ turns: sixTurns(() => 1000) });
    expect(profileInput([standUnder(evidence)], 'sensor').series[0]?.onset).toBeNull();
  });

  it('says "at least" where a reported count stands at the limit of its field, and only there', () => {
    const evidence = clippedStick();
    const { atLeast } = profileInput([standUnder(evidence, eightBits)], 'reported');
    expect(atLeast.flatMap((censored, index) => (censored ? [index * 5] : []))).toEqual([0]);
  });

  it('never says "at least" of a sensor count', () => {
    const evidence = clippedStick();
    expect(profileInput([standUnder(evidence, eightBits)], 'sensor').atLeast).not.toContain(true);
  });
});

describe('planeInput', () => {
  it('draws full output and the zone back into raw counts', () => {
    const [series] = planeInput(wholeStick(), [standUnder(wholeStick())], chainOf(zone)).series;
    expect(Math.max(...(series?.unit.filter((_, index) => index % 2 === 0) ?? []))).toBeCloseTo(3000, 6);
    expect(Math.max(...(series?.zone?.filter((_, index) => index % 2 === 0) ?? []))).toBeCloseTo(2080, 6);
  });

  it('has no zone edge where the zone takes nothing', () => {
    const none = { ...zone, inner: 0 };
    expect(
      planeInput(wholeStick(), [standUnder(wholeStick(), mapping, none)], chainOf(none)).series[0]?.zone,
    ).toBeNull();
  });

  it('takes directions about the rest where there is no rim', () => {
    const evidence = makeEvidence({ dwells: [{ point: { x: 2100, y: 1900 } }] });
    expect(planeInput(evidence, [standUnder(evidence)], chainOf(zone)).about).toEqual({ x: 2100, y: 1900 });
  });
});

describe('railsInput', () => {
  it('takes the extents over all turns', () => {
    const evidence = makeEvidence({
      turns: [
        { way: 'clockwise', radius: () => 900 },
        { way: 'counterClockwise', radius: () => 950 },
      ],
      about: { x: 2000, y: 2000 },
    });
    expect(railsInput(evidence, []).extents).toEqual({ xMin: 1050, xMax: 2950, yMin: 1050, yMax: 2950 });
  });

  it('has no extents without a rim and no rest points without a rest', () => {
    expect(railsInput(makeEvidence({}), [])).toMatchObject({ extents: null, rests: [] });
  });
});
