import { describe, expect, it } from 'vitest';
import type { Finding, Verdict } from '../../../core/findings/finding.ts';
import { judgedInBrief, judgedSticks, type Report } from '../../../renderer/stick/judged-stick.ts';
import { emptyReport } from '../../support/empty-report.ts';
import { makeFinding } from '../findings/make-finding.ts';

function reportOf(verdict: Verdict, findings: readonly Finding[]): Report {
  return { ...emptyReport(), verdict: { left: verdict }, findings: structuredClone(findings) as Report['findings'] };
}

const axis = { min: 0, centre: 1, max: 2 };
const stickReport: NonNullable<Report['sticks']['left']> = {
  rest: null,
  rim: null,
  travel: null,
  flick: null,
  disturbance: null,
  allan: null,
  warmUp: null,
  mapping: { x: axis, y: axis },
  mappingFrom: 'range',
  captures: 'marked',
  lacks: [],
};

const holds = makeFinding({ id: 'overshoot', decision: 'pass', says: 'No overshoot.' });
const open = makeFinding({ id: 'turned-part', decision: 'cannot say', says: 'The turn cannot be told from the hand.' });

describe('judgedSticks', () => {
  it('sorts what was judged by its decision and keeps the order within', () => {
    const [left] = judgedSticks(reportOf('reseat', [holds, makeFinding(), open]));
    expect([left?.failed, left?.unsure, left?.held].map((list) => list?.map(({ key }) => key))).toEqual([
      ['seat-not-flat'],
      ['turned-part'],
      ['overshoot'],
    ]);
  });

  it('gives the reason as it was judged, and what was not captured beside it', () => {
    const lacks = [{ code: 'no-turn', says: 'No whole turn is in this log.' }];
    const report = { ...reportOf('undecided', [open]), verdictWhy: { left: 'The gate was not turned.' } };
    const stick = { ...stickReport, lacks };
    const [left] = judgedSticks({ ...report, sticks: { left: stick } });
    expect([left?.reason, left?.missing]).toEqual(['The gate was not turned.', ['No whole turn is in this log.']]);
  });

  it('leaves a stick without a verdict out', () => {
    expect(judgedSticks(reportOf('keep', [])).map(({ stick }) => stick)).toEqual(['left']);
  });
});

describe('judgedInBrief', () => {
  it('counts the gravest', () => {
    const caution = makeFinding({ severity: 'caution' });
    expect(judgedInBrief(reportOf('reseat', [caution, makeFinding(), makeFinding()]))).toBe('2 faults');
    expect(judgedInBrief(reportOf('recalibrate', [caution, holds]))).toBe('1 caution');
    expect(judgedInBrief(reportOf('undecided', [open]))).toBe('undecided');
    expect(judgedInBrief(reportOf('keep', [holds]))).toBe('all hold');
  });
});
