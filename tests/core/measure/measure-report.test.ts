import { describe, expect, it } from 'vitest';
import type { Track } from '../../../core/capture/evidence/track.ts';
import type { PadMapping, StickMapping } from '../../../core/mapping/mapping.ts';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeSurveyTrack } from '../../support/make-survey-track.ts';
import { makeTrack } from '../../support/make-track.ts';

const wish = { fields: reportedFields, rest: { x: 130, y: 124 }, gate: 110, releases: 12, turnsEachWay: 3 };
const survey = makeSurveyTrack(wish);
const file: StickMapping = { x: { min: 20, centre: 130, max: 240 }, y: { min: 14, centre: 124, max: 234 } };

describe('measureTrack', () => {
  it('measures rest and rim of a marked survey under the logical range', () => {
    const report = measureTrack(survey, null);
    expect(report).toMatchObject({ mappingFrom: 'range', captures: 'marked' });
    expect(report.log).toMatchObject({ domain: 'reported', lost: null, duplicates: 0 });
    expect(report.log.rateHz).toBeCloseTo(1000, 9);
    const { rest, rim, travel, ...others } = report.sticks.left!;
    expect(rest).toMatchObject({ releases: 12, point: { x: 130, y: 124 } });
    expect(rest?.offset.x).toBeCloseTo(2.5 / 127.5, 12);
    expect(rest?.offset.y).toBeCloseTo(3.5 / 127.5, 12);
    expect(rest?.toleranceRadius).toBeGreaterThan(rest!.offset.magnitude);
    expect(rim?.turns.clockwise).toBeGreaterThanOrEqual(3);
    expect(rim?.turns.counterClockwise).toBeGreaterThanOrEqual(3);
    expect(rim?.directions.every((one) => one.covered)).toBe(true);
    // The turns of a rim go from gate to gate too; but nothing was prompted.
    expect(travel).toMatchObject({ sweeps: 0, x: { min: 20, max: 240 }, turnAngle: null, skewAngle: null });
    expect(others).toEqual({
      flick: null,
      disturbance: null,
      allan: null,
      warmUp: null,
      mapping: rangeMapping(reportedFields),
      mappingFrom: 'range',
      captures: 'marked',
      lacks: [],
    });
    expect(report).toMatchObject({ inputs: null });
  });

  it('finds a gate full all round under the mapping that was made for it', () => {
    const rim = measureTrack(survey, { left: file }).sticks.left?.rim;
    expect(rim?.meanRadialError).toBeLessThan(0.006);
    expect(rim?.leastReach?.value).toBeGreaterThan(0.985);
  });

  it('takes the mapping of the file, else the one the pad stores, else the range', () => {
    const layers = { layers: { user: { left: file }, factory: null } };
    const stored: Track = { ...survey, marks: [...survey.marks, { t: 0, name: 'layers', detail: layers }] };
    const from = (given: PadMapping | null, track = stored) => {
      const report = measureTrack(track, given);
      return [report.mappingFrom, report.sticks.left?.mappingFrom];
    };
    expect(from({ left: rangeMapping(reportedFields) })).toEqual(['file', 'file']);
    expect(from(null)).toEqual(['stored', 'stored']);
    expect(from(null, survey)).toEqual(['range', 'range']);
    // A file without this stick leaves it to what the pad stores, and says so at the stick.
    expect(from({ right: file })).toEqual(['file', 'stored']);
  });

  it('infers the captures of a log without marks', () => {
    const report = measureTrack(makeSurveyTrack({ ...wish, marked: false }), null);
    expect(report.captures).toBe('inferred');
    expect(report.sticks.left?.rest?.point).toEqual({ x: 130, y: 124 });
  });

  it('says what is missing of an empty log and of a pad without sticks', () => {
    const empty = measureTrack(makeTrack({}), null);
    expect(empty).toMatchObject({ sticks: {}, log: { reports: 0, rateHz: null, interval: null } });
    const bare = makeSurveyTrack({ ...wish, releases: 0, turnsEachWay: 0 });
    const report = measureTrack(bare, null);
    expect(report.sticks.left).toMatchObject({ rim: null });
    expect(report.sticks.left?.lacks.length).toBeGreaterThan(0);
  });

  it('holds no number that JSON cannot write', () => {
    const text = JSON.stringify(measureTrack(survey, null), (_, value: unknown) => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(String(value));
      return value;
    });
    expect(text.length).toBeGreaterThan(1000);
  });
});
