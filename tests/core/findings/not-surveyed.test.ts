/** A stick that the log holds nothing of is not surveyed: neither kept nor undecided. */
import { describe, expect, it } from 'vitest';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { measureReportSchema } from '../../../shared/report-schemas.ts';
import { surveyUnit } from '../../blind/survey-unit.ts';

const both = surveyUnit({ ...demos.healthy.build, intervalMicros: 4000 }, 3);

/** The right stick lay untouched all along. */
function untouched(track: Track): Track {
  const { left } = track.sticks;
  if (left === undefined) throw new Error('There is no left stick.');
  const still = (value: number) => left.x.map(() => value);
  return { ...track, sticks: { left, right: { ...left, x: still(2048), y: still(2050) } } };
}

/** The pad has a right stick, and no report of the log carries it. */
function without(track: Track): Track {
  const { left } = track.sticks;
  if (left === undefined) throw new Error('There is no left stick.');
  const sticks = { left: left.fields, right: left.fields };
  return { ...track, layout: { ...track.layout, sticks }, sticks: { left } };
}

describe('a stick of the pad', () => {
  it.each([
    ['that lay untouched while the other one was surveyed', untouched(both)],
    ['that lay untouched in a log without marks', untouched({ ...both, marks: [] })],
    ['that no report carries', without(both)],
  ])('%s is not surveyed, and the reason is said', (_, track) => {
    const report = judgeTrack(track, null);
    expect(report.verdict).toEqual({ left: 'keep', right: 'not surveyed' });
    expect(report.verdictWhy.right).toMatch(/right stick[^\n]*\.$/u);
    expect(measureReportSchema.safeParse(report).success).toBe(true);
  });

  it('that was surveyed and moved in no direction is not called so', () => {
    const track = untouched(both);
    const marks = track.marks.flatMap((mark) =>
      mark.detail['stick'] === 'left' ? [mark, { ...mark, detail: { ...mark.detail, stick: 'right' } }] : [mark],
    );
    expect(judgeTrack({ ...track, marks }, null).verdict.right).toBe('undecided');
  });

  it('that the pad does not have gets no verdict', () => {
    const { left } = both.sticks;
    if (left === undefined) throw new Error('There is no left stick.');
    const one = { ...both, layout: { ...both.layout, sticks: { left: left.fields } }, sticks: { left } };
    expect(judgeTrack(one, null).verdict).toEqual({ left: 'keep' });
  });
});
