import { describe, expect, it } from 'vitest';
import { effectiveStep, effectiveSteps } from '../../../core/capture/effective-step.ts';
import { gatherEvidence } from '../../../core/capture/gather-evidence.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeSurveyTrack } from '../../support/make-survey-track.ts';

function comb(first: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => first + step * index);
}

describe('effectiveStep', () => {
  it('is 1 as soon as two counts are neighbours', () => {
    expect(effectiveStep([2000, 2016, 2032, 2031, 2048, 2064])).toBe(1);
  });

  it('tells a comb where enough distinct counts lie on it, the sooner the coarser it is', () => {
    expect(effectiveStep(comb(2003, 16, 4))).toBe(1);
    expect(effectiveStep(comb(2003, 16, 5))).toBe(16);
    expect(effectiveStep(comb(1000, 2, 11))).toBe(1);
    expect(effectiveStep(comb(1000, 2, 12))).toBe(2);
  });

  it('counts a value once, however often it comes', () => {
    expect(effectiveStep(Array.from({ length: 500 }, (_, index) => 2000 + 16 * (index % 3)))).toBe(1);
  });

  it('takes no few spots for a comb, and no values that are no counts', () => {
    expect(effectiveStep([])).toBe(1);
    expect(effectiveStep([2048, 2048])).toBe(1);
    expect(effectiveStep([2000, 2100, 2400])).toBe(1);
    expect(effectiveStep([...comb(0, 16, 30), Number.NaN])).toBe(1);
    expect(effectiveStep([...comb(0, 16, 30), 8.5])).toBe(1);
  });

  it('is told of each axis alone', () => {
    expect(effectiveSteps({ x: comb(0, 8, 40), y: comb(3, 1, 40) })).toEqual({ x: 8, y: 1 });
  });
});

it('gatherEvidence takes the step from all readings, not from those at rest alone', () => {
  const track = makeSurveyTrack({
    fields: reportedFields,
    rest: { x: 128, y: 128 },
    gate: 100,
    releases: 2,
    turnsEachWay: 1,
  });
  const left = track.sticks.left!;
  const coarse = { ...left, x: left.x.map((count) => 4 * Math.round(count / 4)) };
  expect(gatherEvidence({ ...track, sticks: { left: coarse } }, 'left').step).toEqual({ x: 4, y: 1 });
});
