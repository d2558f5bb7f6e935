import { describe, expect, it } from 'vitest';
import type { Finding, Verdict } from '../../../core/findings/finding.ts';
import { judgedInBrief, judgedSticks, type Report } from '../../../renderer/findings/judged-stick.ts';
import { emptyReport } from '../../support/empty-report.ts';
import { makeFinding } from './make-finding.ts';

function reportOf(verdict: Verdict, findings: readonly Finding[]): Report {
  return { ...emptyReport(), verdict: { left: verdict }, findings: structuredClone(findings) as Report['findings'] };
}

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

  it('gives the leading fault as the reason', () => {
    expect(judgedSticks(reportOf('reseat', [holds, makeFinding()]))[0]?.reason).toBe(makeFinding().says);
  });

  it('counts what holds and what cannot be told as the reason to keep', () => {
    expect(judgedSticks(reportOf('keep', [holds, open]))[0]?.reason).toBe('1 check holds. 1 cannot be told.');
  });

  it('gives what is missing as the reason for no decision', () => {
    expect(judgedSticks(reportOf('undecided', [holds, open]))[0]?.reason).toBe(open.says);
    expect(judgedSticks(reportOf('undecided', []))[0]?.reason).toContain('Nothing was measured');
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
