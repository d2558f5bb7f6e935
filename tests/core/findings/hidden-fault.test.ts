import { expect, test } from 'vitest';
import { findLooseReturn } from '../../../core/findings/find-loose-return.ts';
import { findStaleMapping } from '../../../core/findings/find-stale-mapping.ts';
import { hiddenFault } from '../../../core/findings/hidden-fault.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

test('a mapping that leaves a loose return as it is says so, for that stick alone', () => {
  const loose = findLooseReturn(makeSubject({ scatter: 60 }), defaultLimits)!;
  expect(loose.decision).toBe('fail');
  expect(hiddenFault([loose], 'left')).toContain('loose return');
  expect(hiddenFault([loose], 'right')).toBeNull();
});

test('what passes, and stored numbers that are stale, are no reason against new numbers', () => {
  const sound = findLooseReturn(makeSubject({ scatter: 4 }), defaultLimits)!;
  const stale = findStaleMapping(makeSubject({ rest: { x: 2200, y: 2048 } }), defaultLimits);
  expect(stale?.decision).toBe('fail');
  expect(hiddenFault([sound, ...(stale === null ? [] : [stale])], 'left')).toBeNull();
});
