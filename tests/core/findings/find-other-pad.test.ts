import { describe, expect, it } from 'vitest';
import { findOtherPad } from '../../../core/findings/find-other-pad.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { StickReport } from '../../../core/measure/measure-report.ts';
import { makeSubject } from './make-subject.ts';

const here = { vendorId: 1, productId: 2, serial: 'a', unit: null };
const { rest, rim } = makeSubject().report;

function find(restOff: number, reaches: readonly (number | null)[], from: StickReport['mappingFrom'] = 'stored') {
  const directions = reaches.map((reach) => ({ ...rim!.directions[0]!, reach }));
  const report = {
    rest: { ...rest!, offset: { ...rest!.offset, magnitude: restOff } },
    rim: { ...rim!, directions },
    mappingFrom: from,
  };
  return findOtherPad(makeSubject({ report }), here, null, defaultLimits);
}

describe('findOtherPad', () => {
  it('takes the rest or the middle reach, whichever is further off', () => {
    expect(find(0.7, [1, 1.6, 1.5])).toMatchObject({ value: 0.7, u95: 0.05, limit: 0.5, decision: 'fail' });
    expect(find(0.7, [1, 1.6, 1.5])?.says).toContain('rests at 70 %');
    const far = find(0.1, [1.75, null, 3, 1])!;
    expect(far).toMatchObject({ value: 0.75, severity: 'fault' });
    expect(far.says).toContain('reaches 175 %');
    expect(find(0, [0.25, 0.25, 1])?.value).toBe(0.75);
  });

  it('is absent up to half of full deflection, and cannot say just beyond', () => {
    expect(find(0.5, [1])).toBeNull();
    expect(find(0.54, [1])?.decision).toBe('cannot say');
    expect(find(0.56, [1])?.decision).toBe('fail');
    expect(find(0.9, [1], 'range')).toBeNull();
  });

  it('goes by what file and log say of their pad, where the mapping is of a file', () => {
    const other = { ...here, productId: 3 };
    const named = (mappingFrom: StickReport['mappingFrom']) =>
      findOtherPad(makeSubject({ report: { mappingFrom } }), here, other, defaultLimits);
    expect(named('file')).toMatchObject({ decision: 'fail', against: [] });
    expect(named('file')?.for).toHaveLength(1);
    expect(named('stored')).toBeNull();
  });
});
