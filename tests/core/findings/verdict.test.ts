/** The order of findings, the verdict, and the guard bands under both. */
import { describe, expect, it } from 'vitest';
import { decide } from '../../../core/findings/decide.ts';
import {
  findingIds,
  type Decision,
  type Finding,
  type FindingId,
  type Verdict,
} from '../../../core/findings/finding.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeFinding } from '../../../core/findings/make-finding.ts';
import { causesOf, rankFindings } from '../../../core/findings/rank-findings.ts';
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

  it('puts what does not allow a statement before what merely could not be told', () => {
    const ranked = rankFindings([
      finding('noisy-joint', 'cannot say', { value: 9 }),
      finding('rim-not-covered', 'cannot say', { severity: 'caution' }),
    ]);
    expect(ranked.map(({ id }) => id)).toEqual(['rim-not-covered', 'noisy-joint']);
  });

  it('goes by how many times the limit a value is, and has one without a limit last', () => {
    const ranked = rankFindings([
      finding('warming-up', 'fail', { value: 50, limit: null }),
      finding('overshoot', 'fail', { value: 6, limit: 4 }),
      finding('disturbed-rest', 'fail', { value: null }),
      finding('skewed-part', 'fail', { value: 3, limit: 1 }),
    ]);
    expect(ranked.map(({ id }) => id)).toEqual(['skewed-part', 'overshoot', 'warming-up', 'disturbed-rest']);
  });

  it('counts as caused only what fails', () => {
    const ranked = rankFindings([
      finding('stale-mapping', 'pass', { value: 9 }),
      finding('overshoot', 'pass'),
      finding('seat-not-flat', 'fail'),
    ]);
    expect(ranked.map(({ id }) => id)).toEqual(['seat-not-flat', 'stale-mapping', 'overshoot']);
  });

  it('keeps the sticks apart: the seat of one explains nothing of the other', () => {
    const ranked = rankFindings([
      finding('stale-mapping', 'fail', { value: 9, stick: 'right' }),
      finding('seat-not-flat', 'fail'),
    ]);
    expect(ranked[0]?.id).toBe('stale-mapping');
  });
});

describe('a cause', () => {
  const brings: readonly (readonly [FindingId, FindingId])[] = [
    ['mapping-of-another-pad', 'layers-disagree'],
    ['warming-up', 'off-centre-part'],
    ['dead-axis', 'seat-not-flat'],
    ['swapped-axes', 'turned-part'],
    ['inverted-axis', 'off-centre-part'],
    ['worn-track', 'noisy-joint'],
    ['noisy-joint', 'overshoot'],
    ['seat-not-flat', 'clipped-sensor'],
    ['off-centre-part', 'clipped-sensor'],
    ['clipped-sensor', 'short-range'],
    ['short-range', 'stale-mapping'],
    ['turned-part', 'stale-mapping'],
    ['skewed-part', 'turned-part'],
    ['loose-return', 'stale-mapping'],
    ['stale-mapping', 'layers-disagree'],
  ];

  it.each(brings)('%s brings %s about where it fails, in the same stick', (cause, consequence) => {
    const own = finding(consequence, 'fail');
    const failed = finding(cause, 'fail');
    expect(causesOf(own, [failed, own])).toEqual([failed]);
    expect(causesOf(own, [finding(cause, 'cannot say'), finding(cause, 'fail', { stick: 'right' })])).toEqual([]);
    expect(causesOf(failed, [failed, own])).toEqual([]);
  });

  it.each(['overshoot', 'layers-disagree', 'disturbed-rest', 'inputs-fail', 'late-reports'] as const)(
    '%s explains nothing else',
    (id) => {
      for (const { id: other } of findingIds.map((one) => finding(one, 'fail')))
        expect(causesOf(finding(other, 'fail'), [finding(id, 'fail')])).toEqual([]);
    },
  );
});

describe('the verdict', () => {
  const alone: Readonly<Record<FindingId, Verdict>> = {
    'dead-axis': 'reseat',
    'swapped-axes': 'reseat',
    'inverted-axis': 'reseat',
    'worn-track': 'replace',
    'noisy-joint': 'reseat',
    'seat-not-flat': 'reseat',
    'turned-part': 'reseat',
    'skewed-part': 'replace',
    'short-range': 'reseat',
    'clipped-sensor': 'replace',
    'loose-return': 'replace',
    overshoot: 'replace',
    'disturbed-rest': 'reseat',
    'off-centre-part': 'recalibrate',
    'stale-mapping': 'recalibrate',
    'layers-disagree': 'recalibrate',
    'mapping-of-another-pad': 'undecided',
    'warming-up': 'undecided',
    'rest-not-measured': 'undecided',
    'rim-not-covered': 'undecided',
    // Of the whole pad, not of a stick.
    'inputs-fail': 'keep',
    'late-reports': 'keep',
    'signal-lost': 'reseat',
    'slow-return': 'replace',
    'axes-together': 'reseat',
    'drifting-rest': 'undecided',
    'two-rests': 'replace',
    'odd-release': 'keep',
    'unpushed-release': 'keep',
    'several-surveys': 'keep',
    'uneven-reach': 'recalibrate',
    'hidden-rest': 'keep',
  };

  it.each(findingIds.map((id) => [id, alone[id]] as const))('where %s alone fails is: %s', (id, verdict) => {
    for (const severity of ['fault', 'caution'] as const)
      expect(verdictOf([...without(id), finding(id, 'fail', { severity })]).verdict).toBe(verdict);
  });

  it('is that of the first fault, a caution only where no fault stands', () => {
    const caution = finding('off-centre-part', 'fail', { severity: 'caution' });
    const others = without('off-centre-part');
    const faults = [finding('overshoot', 'fail'), finding('turned-part', 'fail')];
    expect(verdictOf([caution, ...faults, ...others])).toEqual({ verdict: 'replace', why: 'overshoot fail' });
    expect(verdictOf([caution, ...faults.toReversed(), ...others]).verdict).toBe('reseat');
    expect(verdictOf([finding('inputs-fail', 'fail'), caution, ...others]).verdict).toBe('recalibrate');
  });

  it('waits before all else', () => {
    const warm = finding('warming-up', 'fail', { severity: 'caution' });
    expect(verdictOf([finding('worn-track', 'fail'), warm, ...allPass]).why).toBe('warming-up fail');
  });

  it('names what nothing in the log says', () => {
    const partly = allPass.filter(({ id }) => id !== 'skewed-part' && id !== 'loose-return');
    const { verdict, why } = verdictOf(partly);
    expect(verdict).toBe('undecided');
    expect(why).toMatch(/has (skewed part, loose return|loose return, skewed part); record/);
  });

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

describe('a part that reads off its middle', () => {
  const offCentre = finding('off-centre-part', 'fail', { severity: 'caution', says: 'It rests 5 % off.' });
  const others = without('off-centre-part');

  it('is kept where the stored numbers take that up, and only where they are known to', () => {
    const stored = (decision: Decision) => verdictOf([offCentre, ...others, finding('stale-mapping', decision)]);
    expect(stored('pass')).toEqual({
      verdict: 'keep',
      why: 'It rests 5 % off, and the stored numbers take that up.',
    });
    expect(stored('cannot say').verdict).toBe('recalibrate');
    expect(verdictOf([offCentre, ...others]).verdict).toBe('recalibrate');
  });

  it('is the only thing that they take up', () => {
    const fits = finding('stale-mapping', 'pass');
    for (const id of ['seat-not-flat', 'skewed-part', 'uneven-reach'] as const)
      expect(verdictOf([finding(id, 'fail', { severity: 'caution' }), ...without(id), fits]).verdict).not.toBe('keep');
  });

  it('does not hide another fault, nor what is missing', () => {
    const fits = finding('stale-mapping', 'pass');
    expect(verdictOf([offCentre, finding('overshoot', 'fail'), ...others, fits]).verdict).toBe('replace');
    const thin = finding('rim-not-covered', 'cannot say', { severity: 'caution', says: 'No rim.' });
    expect(verdictOf([offCentre, thin, ...others, fits])).toEqual({ verdict: 'undecided', why: 'No rim.' });
    // Where the numbers do not take it up, both are said.
    expect(verdictOf([offCentre, thin, ...others])).toEqual({
      verdict: 'undecided',
      why: 'It rests 5 % off. No rim.',
    });
  });
});

describe('simple acceptance', () => {
  const open = (id: FindingId, value: number | null, wish: Partial<Finding> = {}) =>
    finding(id, 'cannot say', { value, u95: 0.0123, limit: 1, unit: 'share', ...wish });
  const judged = (one: Finding) => verdictOf([one, ...without(one.id)]);

  it('keeps a stick that lies within its limit by its value, and says how fine could be told', () => {
    expect(judged(open('skewed-part', 1, { unit: 'degrees', u95: 0.74 }))).toEqual({
      verdict: 'keep',
      why: 'Everything that was measured stays within its limits. Finer than this cannot be told: skewed part ± 0.7°.',
    });
    expect(judged(open('loose-return', 0.9)).why).toContain('Finer than this cannot be told: loose return ± 1.2 %.');
    const both = [open('loose-return', 0.9), open('seat-not-flat', 0.5, { u95: 0.02 })];
    expect(verdictOf([...both, ...without('loose-return').filter(({ id }) => id !== 'seat-not-flat')]).why).toContain(
      'loose return ± 1.2 %, seat not flat ± 2.0 %.',
    );
  });

  it('does not keep one beyond it, or of which value, uncertainty or limit are not known', () => {
    for (const one of [
      open('skewed-part', 1.001),
      open('skewed-part', null),
      open('skewed-part', 0.5, { u95: null }),
      open('skewed-part', 0.5, { limit: null }),
    ])
      expect(judged(one)).toEqual({ verdict: 'undecided', why: one.says });
  });
});

describe('a pad that cuts the gate off', () => {
  const told = allPass.filter(({ id }) => id === 'off-centre-part' || id === 'loose-return');

  it('is kept by what it lets be told, and says what it hides', () => {
    expect(verdictOf(told, 'reported')).toEqual({
      verdict: 'keep',
      why: 'Everything that was measured stays within its limits. The pad reports no more than full output, so that nothing can be told of: seat not flat, skewed part, short range.',
    });
    expect(verdictOf(told, 'sensor').verdict).toBe('undecided');
    expect(verdictOf(told).verdict).toBe('undecided');
  });

  it('hides nothing that was judged, and not the return', () => {
    const open = finding('skewed-part', 'cannot say');
    expect(verdictOf([...told, open], 'reported')).toEqual({ verdict: 'undecided', why: open.says });
    expect(verdictOf([...told, finding('skewed-part', 'pass')], 'reported').why).toContain(
      'told of: seat not flat, short range.',
    );
    expect(verdictOf(told.slice(0, 1), 'reported').why).toContain('whether it has loose return');
  });

  it('with a rim that was not covered says so, even of a part that is off centre', () => {
    const missing = finding('rim-not-covered', 'cannot say', { severity: 'caution', says: 'The gate is not covered.' });
    const off = finding('off-centre-part', 'fail', { severity: 'caution', says: 'It is off centre.' });
    expect(verdictOf([missing, ...told], 'reported')).toEqual({ verdict: 'undecided', why: missing.says });
    expect(verdictOf([off, missing, ...told.slice(1)], 'reported')).toEqual({
      verdict: 'undecided',
      why: 'It is off centre. The gate is not covered.',
    });
    const fault = { ...off, severity: 'fault' } as const;
    expect(verdictOf([fault, missing, ...told.slice(1)], 'reported').verdict).toBe('recalibrate');
  });
});

describe('rivals for one outline', () => {
  it('do not cause each other unless one is a caution, the less likely of the two', () => {
    const seat = finding('seat-not-flat', 'fail');
    const side = finding('short-range', 'fail');
    expect(causesOf(seat, [seat, side])).toEqual([]);
    expect(causesOf(side, [seat, side])).toEqual([]);
    const second = { ...side, severity: 'caution' } as const;
    expect(causesOf(second, [seat, second])).toEqual([seat]);
    expect(causesOf(seat, [seat, second])).toEqual([]);
    // The likelier one leads, however much farther beyond its limit the other is.
    expect(rankFindings([{ ...second, value: 90 }, seat]).map(({ id }) => id)).toEqual([
      'seat-not-flat',
      'short-range',
    ]);
  });
});
