import { describe, expect, it } from 'vitest';
import { findSeveralSurveys } from '../../../core/findings/find-several-surveys.ts';
import { verdictOf } from '../../../core/findings/verdict.ts';
import { makeSubject } from './make-subject.ts';

describe('findSeveralSurveys', () => {
  it('says nothing of one survey', () => {
    expect(findSeveralSurveys(makeSubject({ subject: { surveys: 1 } }))).toBeNull();
  });

  it('says how many there are and which is judged, as a caution', () => {
    const found = findSeveralSurveys(makeSubject({ subject: { surveys: 3 } }))!;
    expect(found).toMatchObject({ decision: 'fail', severity: 'caution', value: 3, limit: 1, unit: 'surveys' });
    expect(found.says).toBe('This log holds 3 surveys of the left stick; the last one alone is judged.');
  });

  it('leaves the verdict as it is, and is said in its sentence', () => {
    const found = findSeveralSurveys(makeSubject({ subject: { surveys: 2 } }))!;
    const [without, beside] = [verdictOf([]), verdictOf([found])];
    expect(beside.verdict).toBe(without.verdict);
    expect(beside.why).toBe(`${without.why} ${found.says}`);
  });
});
