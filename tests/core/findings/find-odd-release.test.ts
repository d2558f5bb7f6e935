import { describe, expect, it } from 'vitest';
import { findOddRelease } from '../../../core/findings/find-odd-release.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeDwell } from '../../support/make-evidence.ts';
import { HALF, makeSubject, REST } from './make-subject.ts';

/** So far right of the rest in half travels, by the release's number. */
const find = (...odd: readonly (readonly [number: number, share: number])[]) =>
  findOddRelease(
    makeSubject({
      subject: {
        odd: odd.map(([number, share]) => ({
          number,
          dwell: makeDwell({ point: { x: REST.x + share * HALF, y: REST.y }, seconds: number }),
        })),
      },
    }),
    defaultLimits,
  );

describe('findOddRelease', () => {
  it('says which one, of how many and how far, as a caution without uncertainty', () => {
    const found = find([7, 0.08])!;
    expect(found.value).toBeCloseTo(0.08, 9);
    expect(found).toMatchObject({ decision: 'fail', severity: 'caution', u95: 0, limit: 0.015 });
    expect(found.says).toBe(
      'Release 7 of 25 of the left stick came to rest 8.0 % of the half travel from all others: it is left out; take it again.',
    );
    expect(found.for).toEqual(['The other 24 lie together.']);
    expect(found.shows.spans).toEqual([{ startUs: 6.75e6, endUs: 7.25e6 }]);
  });

  it('names two in their order, with the distance of the farther one, which is shown first', () => {
    const found = find([9, 0.05], [4, -0.12])!;
    expect(found.value).toBeCloseTo(0.12, 9);
    expect(found.says).toContain('Releases 4 and 9 of 26 of the left stick came to rest up to 12.0 %');
    expect(found.says).toContain('they are left out; take them again.');
    expect(found.shows.spans.map(({ startUs }) => startUs)).toEqual([3.75e6, 8.75e6]);
    expect(find([4, 0.05], [9, -0.12])!.shows.spans[0]?.startUs).toBe(8.75e6);
  });

  it('measures each axis in its own half travel', () => {
    const dwell = makeDwell({ point: { x: REST.x, y: REST.y + 100 } });
    const subject = makeSubject({ subject: { odd: [{ number: 1, dwell }], half: { x: HALF, y: 500 } } });
    expect(findOddRelease(subject, defaultLimits)?.value).toBeCloseTo(0.2, 9);
  });

  it('is absent where none is odd, and without a rest', () => {
    expect(find()).toBeNull();
    const odd = [{ number: 1, dwell: makeDwell({ point: { x: 2500, y: 2048 } }) }];
    expect(findOddRelease(makeSubject({ releases: 0, subject: { odd } }), defaultLimits)).toBeNull();
  });
});
