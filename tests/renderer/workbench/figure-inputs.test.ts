import { describe, expect, it } from 'vitest';
import { planeInput, profileInput, railsInput, rimPoint } from '../../../renderer/views/workbench/figure-inputs.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';
import { mapping, oneRelease, standUnder, wholeStick, zone } from '../support/bench-stick.ts';

/** A gate of 120 counts about the middle of eight bits, wide enough to the right to meet the limit of the field. */
function clippedStick(): ReturnType<typeof makeEvidence> {
  return makeEvidence({
    fields: reportedFields,
    dwells: [{ point: { x: 128, y: 127 } }],
    turns: sixTurns((degrees) => (degrees === 0 ? 127 : 120)),
    about: { x: 128, y: 127 },
  });
}

const eightBits = { x: { min: 0, centre: 127.5, max: 255 }, y: { min: 0, centre: 127.5, max: 255 } };

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

describe('rimPoint', () => {
  it('is in counts as reported, where up may be less', () => {
    const evidence = clippedStick();
    const standings = [standUnder(evidence, eightBits)];
    expect(rimPoint(evidence, standings, 90)?.y).toBeCloseTo(7, 9);
    expect(rimPoint(evidence, standings, 0)).toEqual({ x: 255, y: 127 });
  });

  it('is nothing where a direction was not covered', () => {
    expect(rimPoint(oneRelease(), [standUnder(oneRelease())], 105)).toBeNull();
  });
});

describe('planeInput', () => {
  it('draws full output and the zone back into raw counts', () => {
    const [series] = planeInput(wholeStick(), [standUnder(wholeStick())], zone).series;
    expect(Math.max(...(series?.unit.filter((_, index) => index % 2 === 0) ?? []))).toBeCloseTo(3000, 6);
    expect(Math.max(...(series?.zone?.filter((_, index) => index % 2 === 0) ?? []))).toBeCloseTo(2080, 6);
  });

  it('has no zone edge where the zone takes nothing', () => {
    const none = { ...zone, inner: 0 };
    expect(planeInput(wholeStick(), [standUnder(wholeStick(), mapping, none)], none).series[0]?.zone).toBeNull();
  });

  it('takes directions about the rest where there is no rim', () => {
    const evidence = makeEvidence({ dwells: [{ point: { x: 2100, y: 1900 } }] });
    expect(planeInput(evidence, [standUnder(evidence)], zone).about).toEqual({ x: 2100, y: 1900 });
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
