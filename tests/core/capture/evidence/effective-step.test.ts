import { describe, expect, it } from 'vitest';
import { effectiveStep, effectiveSteps } from '../../../../core/capture/evidence/effective-step.ts';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import { reportedFields, sensorFields } from '../../../support/fields.ts';
import { makeSurveyTrack } from '../../../support/make-survey-track.ts';

const field = { minimum: 0, maximum: 4095 };

function stepOf(counts: readonly number[]): number {
  return effectiveStep(counts, field);
}

function comb(first: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => first + step * index);
}

describe('effectiveStep', () => {
  it('is 1 as soon as two counts are neighbours', () => {
    expect(stepOf([2000, 2016, 2032, 2031, 2048, 2064])).toBe(1);
  });

  it('tells a comb where enough distinct counts lie on it, the sooner the coarser it is', () => {
    expect(stepOf(comb(2003, 16, 4))).toBe(1);
    expect(stepOf(comb(2003, 16, 5))).toBe(16);
    expect(stepOf(comb(1000, 2, 11))).toBe(1);
    expect(stepOf(comb(1000, 2, 12))).toBe(2);
  });

  it('counts a value once, however often it comes', () => {
    expect(stepOf(Array.from({ length: 500 }, (_, index) => 2000 + 16 * (index % 3)))).toBe(1);
  });

  it('takes no few spots for a comb, and no values that are no counts', () => {
    expect(stepOf([])).toBe(1);
    expect(stepOf([2048, 2048])).toBe(1);
    expect(stepOf([2000, 2100, 2400])).toBe(1);
    expect(stepOf([...comb(16, 16, 30), Number.NaN])).toBe(1);
    expect(stepOf([...comb(16, 16, 30), 8.5])).toBe(1);
  });

  it('is told of each axis alone', () => {
    const readings = { x: Float64Array.from(comb(8, 8, 40)), y: Float64Array.from(comb(3, 1, 40)) };
    expect(effectiveSteps({ fields: sensorFields, ...readings })).toEqual({ x: 8, y: 1 });
  });

  it('passes over counts that are clipped at a limit of the field', () => {
    expect(stepOf([0, ...comb(8, 8, 40), 4095])).toBe(8);
    expect(stepOf([...comb(8, 8, 40), 4093])).toBe(1);
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
