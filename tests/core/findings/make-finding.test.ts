import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../core/findings/finding.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeFinding, type Judged } from '../../../core/findings/make-finding.ts';

const judged: Judged = {
  id: 'overshoot',
  stick: 'right',
  value: 0.2,
  u95: 0.01,
  limit: defaultLimits.overshoot,
  severity: 'fault',
  says: { fail: 'It swings.', pass: 'It does not.', 'cannot say': 'Who knows.' },
  for: ['One.', null],
  against: [null],
  causes: ['A spring'],
  next: 'Heat the posts.',
};
const made = (decision: Decision, wish: Partial<Judged> = {}) => makeFinding({ ...judged, decision, ...wish });

describe('makeFinding', () => {
  it('says what to do next by the decision: never heat or a new part where it cannot be told', () => {
    expect(made('fail').next).toBe('Heat the posts.');
    expect(made('pass').next).toBe('Nothing to do.');
    expect(made('cannot say').next).toBe('Survey the stick once more; until it can be told, leave the part as it is.');
    expect(made('cannot say', { unsure: 'Sweep it again.' }).next).toBe('Sweep it again.');
    expect(made('fail', { unsure: 'Sweep it again.' }).next).toBe('Heat the posts.');
    expect(made('pass', { unsure: 'Sweep it again.' }).next).toBe('Nothing to do.');
  });

  it('cannot say what would fail where not all that it is told by was covered', () => {
    expect(made('fail', { whole: false })).toMatchObject({
      decision: 'cannot say',
      severity: 'note',
      says: 'Who knows.',
      causes: [],
    });
    expect(made('pass', { whole: false }).decision).toBe('pass');
    expect(made('fail', { whole: true }).decision).toBe('fail');
  });

  it('names causes and severity only of what fails', () => {
    expect(made('fail')).toMatchObject({ severity: 'fault', causes: ['A spring'], says: 'It swings.' });
    expect(made('cannot say')).toMatchObject({ severity: 'note', causes: [], says: 'Who knows.' });
    expect(made('pass', { severity: 'caution' })).toMatchObject({ severity: 'note', causes: [] });
    expect(made('fail', { severity: 'caution' }).severity).toBe('caution');
  });

  it('decides by the guard bands where nothing else was decided, and leaves lines out that are none', () => {
    const found = makeFinding(judged);
    expect(found).toMatchObject({ decision: 'fail', for: ['One.'], against: [], limit: 0.05, stick: 'right' });
    expect(found.shows).toEqual({ directions: [], spans: [], counts: [] });
    expect(makeFinding({ ...judged, shows: { directions: [5] } }).shows).toEqual({
      directions: [5],
      spans: [],
      counts: [],
    });
  });
});
