import { describe, expect, it } from 'vitest';
import { findHiddenRest } from '../../../core/findings/find-hidden-rest.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

const find = (width: number, u95 = 0.002, axis: 'x' | 'y' = 'y') =>
  findHiddenRest(makeSubject({ subject: { middleBand: { axis, width, u95 } } }), defaultLimits)!;

describe('findHiddenRest', () => {
  it('decides by 1.5 % of the half travel, as a caution', () => {
    expect([0.0171, 0.0169, 0.0131, 0.0129].map((width) => find(width).decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find(0.08)).toMatchObject({ value: 0.08, u95: 0.002, limit: 0.015, severity: 'caution' });
    expect(find(0.08).says).toBe(
      "Within 8.0 % ± 0.2 % of the half travel about its middle the pad reports the left stick's y as one and the same count: how the stick rests within cannot be told.",
    );
    expect(find(0.015).next).toBe('Sweep slowly through the middle a few times more.');
  });

  it('is absent where nothing tells of the middle', () => {
    expect(findHiddenRest(makeSubject(), defaultLimits)).toBeNull();
  });
});
