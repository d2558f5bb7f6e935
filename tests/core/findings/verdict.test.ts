/** The order of findings, the verdict, and the guard bands under both. */
import { describe, expect, it } from 'vitest';
import { decide } from '../../../core/findings/decide.ts';
import type { Decision, Finding, FindingId } from '../../../core/findings/finding.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeFinding } from '../../../core/findings/make-finding.ts';
import { rankFindings } from '../../../core/findings/rank-findings.ts';
import { verdictOf } from '../../../core/findings/verdict.ts';

function finding(id: FindingId, decision: Decision, wish: Partial<Finding> = {}): Finding {
  const says = `${id} ${decision}`;
  const made = makeFinding({
    id,
    stick: 'left',
    value: 2,
    u95: 0,
    limit: { ...defaultLimits.seat, value: 1 },
    severity: 'fault',
    decision,
    says: { fail: says, pass: says, 'cannot say': says },
    next: 'Look.',
  });
  return { ...made, ...wish };
}

const needed = ['off-centre-part', 'seat-not-flat', 'short-range', 'skewed-part', 'loose-return'] as const;
const allPass = needed.map((id) => finding(id, 'pass'));
const without = (id: FindingId): Finding[] => allPass.filter((one) => one.id !== id);

describe('the guard bands', () => {
  it('pass below and fail above the limit by more than the uncertainty, and cannot say in between', () => {
    expect(decide(0.8, 0.1, 1)).toBe('pass');
    expect(decide(1.2, 0.1, 1)).toBe('fail');
    for (const value of [0.9, 1, 1.1]) expect(decide(value, 0.125, 1)).toBe('cannot say');
  });

  it('cannot say without a value or an uncertainty, or with a number that is none', () => {
    expect(decide(null, 0.1, 1)).toBe('cannot say');
    expect(decide(5, null, 1)).toBe('cannot say');
    expect(decide(Number.NaN, 0.1, 1)).toBe('cannot say');
    expect(decide(5, Number.POSITIVE_INFINITY, 1)).toBe('cannot say');
  });

  it('never print a number that is none', () => {
    const judged = { id: 'overshoot', stick: 'left', severity: 'fault', next: '' } as const;
    const says = { fail: '', pass: '', 'cannot say': 'open' };
    const made = makeFinding({ ...judged, says, limit: defaultLimits.overshoot, value: Number.NaN, u95: Number.NaN });
    expect(made).toMatchObject({ value: null, u95: null, decision: 'cannot say', severity: 'note', says: 'open' });
  });
});

describe('the order of findings', () => {
  it('puts a cause above its consequence, however large that is, and passes last', () => {
    const ranked = rankFindings([
      finding('skewed-part', 'pass'),
      finding('stale-mapping', 'fail', { value: 50 }),
      finding('noisy-joint', 'cannot say'),
      finding('seat-not-flat', 'fail', { value: 1.5 }),
    ]);
    expect(ranked.map(({ id }) => id)).toEqual(['seat-not-flat', 'stale-mapping', 'noisy-joint', 'skewed-part']);
  });

  it('puts the one further beyond its limit first where neither causes the other', () => {
    const ranked = rankFindings([finding('overshoot', 'fail'), finding('skewed-part', 'fail', { value: 3 })]);
    expect(ranked[0]?.id).toBe('skewed-part');
  });

  it('keeps the sticks apart: the seat of one explains nothing of the other', () => {
    const ranked = rankFindings([
      finding('stale-mapping', 'fail', { value: 9, stick: 'right' }),
      finding('seat-not-flat', 'fail'),
    ]);
    expect(ranked[0]?.id).toBe('stale-mapping');
  });
});

describe('the verdict', () => {
  it('keeps a stick only where everything that must be was judged and passes', () => {
    expect(verdictOf(allPass).verdict).toBe('keep');
    for (const id of needed) {
      expect(verdictOf(without(id)).verdict).toBe('undecided');
      const open = verdictOf([...without(id), finding(id, 'cannot say')]);
      expect(open).toEqual({ verdict: 'undecided', why: `${id} cannot say` });
    }
    expect(verdictOf([]).verdict).toBe('undecided');
  });

  it('keeps a stick whose noise the step of its counts hides', () => {
    expect(verdictOf([...allPass, finding('noisy-joint', 'cannot say')]).verdict).toBe('keep');
  });

  it('follows the cause, not its consequence', () => {
    const ranked = rankFindings([
      ...without('seat-not-flat'),
      finding('stale-mapping', 'fail'),
      finding('seat-not-flat', 'fail'),
    ]);
    expect(verdictOf(ranked)).toEqual({ verdict: 'reseat', why: 'seat-not-flat fail' });
    expect(verdictOf([...allPass, finding('stale-mapping', 'fail', { severity: 'caution' })]).verdict).toBe(
      'recalibrate',
    );
    expect(verdictOf([...allPass, finding('worn-track', 'fail')]).verdict).toBe('replace');
  });

  it('is undecided while too little was measured, unless a fault stands all the same', () => {
    const missing = finding('rim-not-covered', 'cannot say', { severity: 'caution' });
    expect(verdictOf([...allPass, missing])).toEqual({ verdict: 'undecided', why: missing.says });
    const stale = finding('stale-mapping', 'fail', { severity: 'caution' });
    expect(verdictOf([stale, missing, ...allPass]).verdict).toBe('undecided');
    expect(verdictOf([finding('dead-axis', 'fail'), missing]).verdict).toBe('reseat');
  });

  it('waits where the part is still warm, or the mapping is of another pad', () => {
    expect(verdictOf([...allPass, finding('warming-up', 'fail')]).verdict).toBe('undecided');
    expect(verdictOf([...allPass, finding('mapping-of-another-pad', 'fail')]).verdict).toBe('undecided');
  });
});
