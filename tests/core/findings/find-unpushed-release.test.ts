import { describe, expect, it } from 'vitest';
import { findUnpushedRelease } from '../../../core/findings/find-unpushed-release.ts';
import { makeDwell } from '../../support/make-evidence.ts';
import { makeSubject, REST } from './make-subject.ts';

const find = (...numbers: readonly number[]) =>
  findUnpushedRelease(
    makeSubject({
      subject: { unpushed: numbers.map((number) => ({ number, dwell: makeDwell({ point: REST, seconds: number }) })) },
    }),
  );

describe('findUnpushedRelease', () => {
  it('says which, of how many, as a caution, and shows when', () => {
    const found = find(9)!;
    expect(found).toMatchObject({ decision: 'fail', severity: 'caution', value: 1, limit: 0, unit: 'releases' });
    expect(found.says).toBe('Release 9 of 25 of the left stick came after no push: it is left out; take it again.');
    expect(found.shows.spans).toEqual([{ startUs: 8.75e6, endUs: 9.25e6 }]);
    expect(find(3, 9, 20)?.says).toBe(
      'Releases 3, 9 and 20 of 27 of the left stick came after no push: they are left out; take them again.',
    );
  });

  it('is absent where each came after a push', () => {
    expect(find()).toBeNull();
  });
});
