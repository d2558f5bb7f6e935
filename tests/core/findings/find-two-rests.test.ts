import { describe, expect, it } from 'vitest';
import { findTwoRests } from '../../../core/findings/find-two-rests.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { reportedFields } from '../../support/fields.ts';
import { HALF, makeSubject } from './make-subject.ts';

/** So many rests, ±1 count about x = 2000; the last ones `apart` half travels up. */
const rests = (count: number, fewer: number, apart: number, scatter = 1) =>
  Array.from({ length: count }, (_, i) => ({
    x: 2000,
    y: 2000 + (i % 2 === 0 ? scatter : -scatter) + (i >= count - fewer ? HALF * apart : 0),
  }));
const find = (count: number, fewer: number, apart: number, scatter = 1) =>
  findTwoRests(makeSubject({ subject: { rests: rests(count, fewer, apart, scatter) } }), defaultLimits);

describe('findTwoRests', () => {
  it('takes how far the two places lie apart, known to their scatter and to a count', () => {
    const found = find(24, 8, 0.05)!;
    expect(found.value).toBeCloseTo(0.05, 9);
    const sigma = Math.sqrt(24 / 22) / HALF;
    expect(found.u95).toBeCloseTo(Math.hypot(2 * sigma * Math.sqrt(1 / 8 + 1 / 16), 1 / HALF), 9);
    expect(found).toMatchObject({ limit: 0.015, decision: 'fail', severity: 'fault' });
    expect(found.says).toContain('5.0 % ± 0.1 % of the half travel apart: 8 of 24 releases lie up of the others');
    expect(found.for).toEqual(['At each of the two it scatters by 0.08 % only.']);
  });

  it('decides by 1.5 %', () => {
    // U is √(2²·1.0445²·(1/8 + 1/16) + 1) = 1.3454 counts of 1250, 0.108 %.
    expect([0.0162, 0.016, 0.014, 0.0138].map((apart) => find(24, 8, apart)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find(24, 8, 0.01)?.says).toContain('too near to matter');
  });

  it('wants three releases at the rarer place', () => {
    expect(find(24, 3, 0.05)?.decision).toBe('fail');
    const two = find(24, 2, 0.05)!;
    expect(two).toMatchObject({ decision: 'pass', value: 0, u95: 0 });
    expect(two.says).toBe('The rests of the left stick lie about one place.');
  });

  it('wants six σ of each between them: two halves of one cloud are no two places', () => {
    // ±1 count about both: σ = 1.0445 counts, six of it 6.27.
    expect(find(24, 12, 6.4 / HALF, 1)?.value).toBeCloseTo(6.4 / HALF, 9);
    expect(find(24, 12, 6.1 / HALF, 1)?.value).toBe(0);
    // On one count each they lie six half counts apart.
    expect(find(24, 12, 3.1 / HALF, 0)?.value).toBeCloseTo(3.1 / HALF, 9);
    expect(find(24, 12, 2.9 / HALF, 0)?.value).toBe(0);
  });

  it('says where they lie as the stick stands, not as its counts grow', () => {
    const down = rests(24, 8, 0.05).map(({ x, y }) => ({ x: x / 16, y: y / 16 }));
    const half = { x: HALF / 16, y: HALF / 16 };
    const subject = makeSubject({ subject: { rests: down, half, fields: reportedFields } });
    expect(findTwoRests(subject, defaultLimits)?.says).toContain('lie down of the others');
  });

  it('is absent with fewer releases than a statement takes, and without a rest', () => {
    expect(find(11, 4, 0.05)).toBeNull();
    expect(find(12, 4, 0.05)?.decision).toBe('fail');
    const subject = { rests: rests(24, 8, 0.05) };
    expect(findTwoRests(makeSubject({ releases: 0, subject }), defaultLimits)).toBeNull();
  });
});
