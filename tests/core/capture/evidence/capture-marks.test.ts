import { describe, expect, it } from 'vitest';
import {
  firstReleaseUs,
  hasCaptureMarks,
  markedDwells,
  markedSpans,
  marksOf,
  repeatsOf,
  timesOf,
  type MarkedSpan,
} from '../../../../core/capture/evidence/capture-marks.ts';
import type { Mark } from '../../../../core/log/visitor.ts';

function capture(t: number, purpose: string, edge: 'begin' | 'end', stick: string | null = 'left'): Mark {
  return { t, name: 'capture', detail: { purpose, stick, edge } };
}

function mark(t: number, name: string, detail: Mark['detail'] = { stick: 'left' }): Mark {
  return { t, name, detail };
}

describe('markedSpans', () => {
  it('pairs begins with their ends, for one stick', () => {
    const marks = [
      capture(1, 'rest', 'begin'),
      capture(5, 'rest', 'end'),
      capture(6, 'rim', 'begin', 'right'),
      capture(8, 'rim', 'end', 'right'),
      capture(9, 'inputs', 'begin', null),
      capture(11, 'inputs', 'end', null),
    ];
    expect(markedSpans(marks, 'left', 99)).toEqual([
      { purpose: 'rest', startUs: 1, endUs: 5 },
      { purpose: 'inputs', startUs: 9, endUs: 11 },
    ]);
  });

  it('ends an open capture with the next begin of any stick, or with the log', () => {
    const marks = [capture(1, 'rest', 'begin'), capture(6, 'rim', 'begin', 'right'), capture(7, 'rim', 'begin')];
    expect(markedSpans(marks, 'left', 99)).toEqual([
      { purpose: 'rest', startUs: 1, endUs: 6 },
      { purpose: 'rim', startUs: 7, endUs: 99 },
    ]);
    expect(markedSpans(marks, 'right', 99)).toEqual([{ purpose: 'rim', startUs: 6, endUs: 7 }]);
  });

  it('keeps captures of both sticks that run at the same time', () => {
    const marks = [
      capture(1, 'rest', 'begin'),
      capture(2, 'rest', 'begin', 'right'),
      capture(8, 'rest', 'end'),
      capture(9, 'rest', 'end', 'right'),
    ];
    expect(markedSpans(marks, 'left', 99)).toEqual([{ purpose: 'rest', startUs: 1, endUs: 8 }]);
    expect(markedSpans(marks, 'right', 99)).toEqual([{ purpose: 'rest', startUs: 2, endUs: 9 }]);
  });

  it('passes over ends without a begin and purposes that it does not know', () => {
    const marks = [capture(1, 'rest', 'end'), capture(2, 'weather', 'begin'), capture(3, 'rim', 'begin')];
    expect(markedSpans(marks, 'left', 7)).toEqual([{ purpose: 'rim', startUs: 3, endUs: 7 }]);
    expect(markedSpans([capture(2, 'rim', 'begin'), capture(3, 'rest', 'end')], 'left', 7)).toEqual([
      { purpose: 'rim', startUs: 2, endUs: 7 },
    ]);
  });
});

describe('markedDwells', () => {
  const span: MarkedSpan = { purpose: 'rest', startUs: 0, endUs: 9_000_000 };
  const dwell = (t: number, edge: string): Mark => mark(t, 'dwell', { stick: 'left', edge });

  it('pairs begins with ends inside of the capture', () => {
    const marks = [dwell(1, 'begin'), dwell(5, 'end'), dwell(7, 'begin'), dwell(9, 'end')];
    expect(markedDwells(marks, span)).toEqual([
      { startUs: 1, endUs: 5 },
      { startUs: 7, endUs: 9 },
    ]);
    expect(markedDwells(marks, { ...span, startUs: 6 })).toEqual([{ startUs: 7, endUs: 9 }]);
  });

  it('forgets a begin that was given up for another or for a release, and an end without a begin', () => {
    const marks = [dwell(1, 'begin'), dwell(3, 'begin'), dwell(6, 'end'), dwell(7, 'end')];
    expect(markedDwells(marks, span)).toEqual([{ startUs: 3, endUs: 6 }]);
    expect(markedDwells([dwell(1, 'begin'), mark(2, 'release'), dwell(5, 'end')], span)).toEqual([]);
  });

  it('lets a last dwell that lacks its end last to the end of the capture where that is long enough', () => {
    expect(markedDwells([dwell(8_400_000, 'begin')], span)).toEqual([{ startUs: 8_400_000, endUs: 9_000_000 }]);
    expect(markedDwells([dwell(8_600_000, 'begin')], span)).toEqual([]);
  });
});

it('takes the marks that name a stick or none, and finds those of a name', () => {
  const marks = [
    mark(1, 'release'),
    mark(2, 'release', { stick: 'right' }),
    mark(3, 'release', {}),
    mark(9, 'release'),
  ];
  expect(marksOf(marks, 'left').map(({ t }) => t)).toEqual([1, 3, 9]);
  expect(timesOf(marks, 'release', { purpose: 'rest', startUs: 2, endUs: 5 })).toEqual([2, 3]);
  const repeats = [mark(1, 'repeat', { of: 'turn' }), mark(2, 'repeat', { of: 'release' }), mark(3, 'repeat', {})];
  expect(repeatsOf(repeats, 'release', { purpose: 'rest', startUs: 0, endUs: 5 })).toEqual([2]);
});

it('tells a marked log by its captures, and finds the first release or dwell', () => {
  expect(hasCaptureMarks([mark(1, 'release'), mark(2, 'layers')])).toBe(false);
  expect(hasCaptureMarks([mark(1, 'capture')])).toBe(true);
  expect(firstReleaseUs([mark(1, 'toward'), mark(2, 'dwell'), mark(3, 'release')])).toBe(2);
  expect(firstReleaseUs([mark(1, 'toward')])).toBeNull();
});
