import { describe, expect, it } from 'vitest';
import { countSurveys, markedSpans } from '../../../core/capture/evidence/capture-marks.ts';
import { lastOfEach, partSurveys } from '../../../core/capture/evidence/part-surveys.ts';
import type { Purpose } from '../../../core/capture/evidence/track.ts';

const spans = (...purposes: readonly Purpose[]) => purposes.map((purpose, at) => ({ purpose, at }));
const places = (purposes: readonly Purpose[]) =>
  partSurveys(spans(...purposes)).map((survey) => survey.map(({ at }) => at));

describe('partSurveys', () => {
  it('begins a survey with a rest after a rim, where a rim follows', () => {
    expect(places(['rest', 'rim', 'travel', 'rest', 'rim', 'flick'])).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
    expect(places(['rest', 'rim', 'rest', 'rim', 'rest', 'rim'])).toEqual([
      [0, 1],
      [2, 3],
      [4, 5],
    ]);
  });

  it('leaves a rest taken again at the end, a second rim and two rests before the rim in their survey', () => {
    expect(places(['rest', 'rim', 'rest'])).toEqual([[0, 1, 2]]);
    expect(places(['rest', 'rim', 'rim', 'travel'])).toEqual([[0, 1, 2, 3]]);
    expect(places(['rest', 'rest', 'rim'])).toEqual([[0, 1, 2]]);
    expect(places([])).toEqual([[]]);
  });
});

describe('lastOfEach', () => {
  it('takes each purpose of the last survey that has it', () => {
    const kept = lastOfEach(spans('rest', 'rim', 'travel', 'travel', 'rest', 'rim'));
    expect(kept.map(({ purpose, at }) => `${purpose} ${at}`)).toEqual(['travel 2', 'travel 3', 'rest 4', 'rim 5']);
  });

  it('changes nothing of one survey', () => {
    const one = spans('rest', 'rest', 'rim', 'travel', 'rest');
    expect(lastOfEach(one)).toEqual(one);
  });
});

describe('markedSpans of a log with two surveys', () => {
  const mark = (t: number, purpose: string, edge: string, stick: string) => ({
    t,
    name: 'capture',
    detail: { purpose, edge, stick },
  });
  const survey = (from: number, stick: string) =>
    ['rest', 'rim'].flatMap((purpose, at) => [
      mark(from + 10 * at, purpose, 'begin', stick),
      mark(from + 10 * at + 9, purpose, 'end', stick),
    ]);
  const marks = [...survey(0, 'left'), ...survey(100, 'right'), ...survey(200, 'left')];

  it('gives those of the last one of this stick, and counts both', () => {
    expect(markedSpans(marks, 'left', 300)).toEqual([
      { purpose: 'rest', startUs: 200, endUs: 209 },
      { purpose: 'rim', startUs: 210, endUs: 219 },
    ]);
    expect(countSurveys(marks, 'left', 300)).toBe(2);
  });

  it('leaves the stick that was surveyed once alone', () => {
    expect(markedSpans(marks, 'right', 300).map(({ startUs }) => startUs)).toEqual([100, 110]);
    expect(countSurveys(marks, 'right', 300)).toBe(1);
  });
});
