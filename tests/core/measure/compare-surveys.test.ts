import { describe, expect, it } from 'vitest';
import { compareSurveys } from '../../../core/measure/compare-surveys.ts';
import { measureTrack, type StickReport } from '../../../core/measure/measure-report.ts';
import { sensorFields } from '../../support/fields.ts';
import { makeSurveyTrack, type SurveyWish } from '../../support/make-survey-track.ts';

function reportOf(wish: Partial<SurveyWish>): StickReport {
  const usual = { fields: sensorFields, rest: { x: 2050, y: 2040 }, gate: 1200, releases: 12, turnsEachWay: 3 };
  const report = measureTrack(makeSurveyTrack({ ...usual, ...wish }), null).sticks.left;
  if (report === undefined) throw new Error('The survey has no left stick.');
  return report;
}

function differing(first: StickReport, second: StickReport): string[] {
  return compareSurveys(first, second)
    .filter(({ differs }) => differs === true)
    .map(({ measure }) => measure);
}

describe('compareSurveys', () => {
  it('finds no difference between a survey and itself', () => {
    expect(differing(reportOf({}), reportOf({}))).toEqual([]);
  });

  it('finds a rest that moved by more than surveying explains, and not one that moved by less', () => {
    const moved = differing(reportOf({}), reportOf({ rest: { x: 2060, y: 2040 } }));
    expect(moved).toContain('restX');
    expect(moved).not.toContain('restY');
    expect(differing(reportOf({}), reportOf({ rest: { x: 2051, y: 2040 } }))).not.toContain('restX');
  });

  it('finds a wider gate by its axes and its least reach', () => {
    const wider = differing(reportOf({}), reportOf({ gate: 1210 }));
    expect(wider).toEqual(expect.arrayContaining(['ellipseMajor', 'ellipseMinor', 'leastReach']));
  });

  it('says nothing of what either survey did not measure', () => {
    const short = compareSurveys(reportOf({}), reportOf({ turnsEachWay: 0 }));
    expect(short.find(({ measure }) => measure === 'leastReach')).toMatchObject({ second: null, differs: null });
  });
});
