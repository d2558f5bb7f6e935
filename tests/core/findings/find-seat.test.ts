import { describe, expect, it } from 'vitest';
import { findSeat } from '../../../core/findings/find-seat.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { HALF, makeSubject } from './make-subject.ts';
import { FAULTY, outlineSeen, posterior, SOUND, spreadOf, type Spread } from './odd-waves.ts';

const { rest } = makeSubject().report;
const REST = 0.001;
const known = { ...rest!, u95: { x: 2 * REST * HALF, y: 2 * REST * HALF } };
const SHARP: Spread = { first: 1e-8, side: 1e-8 };

const find = (
  v: readonly [number, number, number, number],
  spread = SHARP,
  subject: Partial<Subject> = {},
  of: Subject['report']['rest'] = known,
) =>
  findSeat(
    makeSubject({ report: { rest: of }, subject: { outline: outlineSeen(v, spread), ...subject } }),
    defaultLimits,
  );

describe('findSeat', () => {
  it('says how far and which way the rest stands off the centre of its gate, and as what tilt', () => {
    const found = find([-0.04, -0.03, 0, 0])!;
    expect(found.value).toBeCloseTo(0.05, 4);
    expect(found).toMatchObject({ limit: 0.018, decision: 'fail', severity: 'fault' });
    // 5 % of 23°.
    expect(found.says).toMatch(
      /^The left stick rests 5\.0 % ± 0\.2 % of the half travel up and right of its gate's centre, a tilt of about 1\.1° ± 0\.0° where full tilt is 23°: the part does not sit flat\.$/,
    );
    // Toward atan(3/4) = 36.9°, 30° to either side.
    expect(found.shows.directions).toEqual([10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65]);
    expect(found.for[0]).toBe(
      'The whole outline is moved, as a tilt does; a side that reads short would change that side alone.',
    );
    expect(found.for[1]).toBe('The outline fits a round gate to 0.00 %.');
    expect(found.against).toEqual([]);
  });

  it('names the rival with its odds, and is a caution where that is the likelier one', () => {
    const usual = spreadOf(0.002);
    const likely = find([-0.048, 0, 0, 0], usual)!;
    expect(likely).toMatchObject({ decision: 'fail', severity: 'fault' });
    expect(likely.says).toMatch(/sit flat, with odds of \d+(\.\d)? to 1 against a short side of x/);
    expect(likely.for).toHaveLength(1);
    expect(likely.against).toContain('A threefold wave of the gate of a few counts is all that tells the two apart.');
    // Seen as 2 % of a seat and 3 % of a side: the odds for the side are twelve to one.
    const v = [-0.02, Math.log(0.97)] as const;
    const second = find([v[0], 0, v[1], 0], usual)!;
    expect(second).toMatchObject({ decision: 'fail', severity: 'caution' });
    expect(second.says).toMatch(/with odds of 1 to 12 against a short side of x/);
    const { centre, centreU } = posterior(usual, REST, { ...SOUND, centre: FAULTY.centre }, v);
    expect(second.value).toBeCloseTo(Math.abs(centre), 9);
    expect(second.u95).toBeCloseTo(centreU, 9);
  });

  it('passes where no tilt is proven, whatever the value, and says how fine could be told', () => {
    const usual = spreadOf(0.002);
    const { centreU } = posterior(usual, REST, { ...SOUND, centre: FAULTY.centre }, [0, 0]);
    const found = find([-0.018, 0, 0, 0], usual)!;
    expect(found).toMatchObject({ decision: 'pass', next: 'Nothing to do.' });
    expect(found.u95).toBeCloseTo(centreU, 9);
    expect(found.says).toMatch(/: no tilted seat is seen\.$/);
    // With a rest that is known to 1 % only.
    const restless = { ...known, u95: { x: 0.02 * HALF, y: 0.02 * HALF } };
    expect(find([-0.018, 0, 0, 0], usual, {}, restless)?.says).toMatch(/; finer than 2\.\d % the gate hides\.$/);
  });

  it("says that the pad's own mapping may bend the outline, and of which gate it is", () => {
    expect(find([-0.05, 0, 0, 0], SHARP, { domain: 'reported' })?.against).toEqual([
      "The counts come after the pad's own mapping, which may bend the outline.",
    ]);
    const eight = { ...outlineSeen([-0.05, 0, 0, 0], SHARP), sides: 8, residual: 0.0012 } as const;
    expect(find([0, 0, 0, 0], SHARP, { outline: eight })?.for.at(-1)).toBe(
      'The outline fits an eight-sided gate to 0.12 %.',
    );
  });
});
