import { describe, expect, it } from 'vitest';
import type { ZoneAnswer } from '../../../core/zones/chain.ts';
import { zoneSentence } from '../../../renderer/stick/zone-sentence.ts';

const clean: ZoneAnswer = {
  leaks: { releases: 24, leaking: 0, share: 0, upperBound95: 0.117, largestOutput: 0 },
  hides: 'hidden',
  smallestZone: null,
  onset: [
    { angle: 0, deflection: 0.07 },
    { angle: 5, deflection: 0.12 },
    { angle: 10, deflection: 0.09 },
  ],
  unevenness: 0.05,
  gate: null,
  unreached: null,
};

describe('zoneSentence', () => {
  it('says hidden, with the largest onset, where it is, and the unevenness', () => {
    expect(zoneSentence(clean)).toEqual({
      verdict: 'hidden',
      answer: 'hidden',
      cost: 'onset to 12.0\u202f% at 5°, uneven 5.0\u202f%',
    });
  });

  it('claims no more than what was seen where the tolerance radius reaches out of the zone', () => {
    expect(zoneSentence({ ...clean, hides: 'hidden in 24 of 24 seen' })).toMatchObject({
      verdict: 'seen hidden',
      answer: 'hidden in 24 of 24 seen',
    });
  });

  it('counts the leaks and gives the largest output at rest', () => {
    const leaks = { releases: 24, leaking: 3, share: 0.125, upperBound95: 0.29, largestOutput: 0.021 };
    expect(zoneSentence({ ...clean, leaks, hides: 'leaks' })).toMatchObject({
      verdict: 'leaks',
      answer: 'leaks in 3 of 24, up to 2.1\u202f% out',
    });
  });

  it('counts directions that never answer before the gate', () => {
    const onset = [...(clean.onset ?? []), { angle: 15, deflection: null }];
    expect(zoneSentence({ ...clean, onset }).cost).toContain('none before the gate in 1 directions');
    const never = [{ angle: 0, deflection: null }];
    expect(zoneSentence({ ...clean, onset: never, unevenness: null }).cost).toBe(
      'no output before the gate in any direction',
    );
  });

  it('cannot say without a rest, and says what to do', () => {
    const answer = zoneSentence({ ...clean, leaks: null, hides: null, onset: null, unevenness: null });
    expect(answer.verdict).toBe('cannot say');
    expect(answer.answer).toContain('let the stick go');
    expect(answer.cost).toBe('');
  });
});
