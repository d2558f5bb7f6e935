import { describe, expect, it } from 'vitest';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Outline } from '../../../core/findings/outline/fit-outline.ts';
import { suspectsOf } from '../../../core/findings/outline/suspects.ts';
import type { PinnedSide } from '../../../core/findings/pinned-sides.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { HALF, makeSubject } from './make-subject.ts';
import { FAULTY, outlineSeen, posterior, SOUND, spreadOf, type Spread } from './odd-waves.ts';

const { rest } = makeSubject().report;
const REST = 0.001;
const known = { ...rest!, u95: { x: 2 * REST * HALF, y: 2 * REST * HALF } };
const SHARP: Spread = { first: 1e-8, side: 1e-8 };
const short = (share: number): number => Math.log(1 - share);

const find = (v: readonly [number, number, number, number], spread = SHARP, subject: Partial<Subject> = {}) =>
  findShortRange(
    makeSubject({ report: { rest: known }, subject: { outline: outlineSeen(v, spread), ...subject } }),
    defaultLimits,
  );
const pinned = (axis: 'x' | 'y'): PinnedSide => ({ axis, side: 1, count: 3000, readings: 90, share: 0.9 });

describe('findShortRange', () => {
  it('says by how much which side gives less, and shows its directions', () => {
    const found = find([0, 0, short(0.06), 0])!;
    expect(found.value).toBeCloseTo(0.06, 4);
    expect(found.u95).toBeCloseTo(posterior(SHARP, REST, { ...SOUND, side: FAULTY.side }, [0, 0]).sideU, 9);
    expect(found).toMatchObject({ limit: 0.012, decision: 'fail', severity: 'fault' });
    expect(found.says).toBe(
      'The left stick gives 6.0 % ± 0.0 % less right than on the other side: its range is short there.',
    );
    expect(found.shows.directions[0]).toBe(0);
    expect(found.shows.directions).toHaveLength(19);
  });

  it.each([
    ['left', [0, 0, -short(0.06), 0], 180],
    ['up', [0, 0, 0, short(0.06)], 90],
    ['down', [0, 0, 0, -short(0.06)], 270],
  ] as const)('names the side: %s', (name, v, direction) => {
    const found = find(v)!;
    expect(found.says).toContain(`less ${name} than on the other side`);
    expect(found.shows.directions[9]).toBe(direction);
  });

  it('takes a side that is proven before one that is not, else the shorter one', () => {
    expect(find([0, 0, short(0.03), short(0.05)])?.says).toContain('less up');
    expect(find([0, 0, short(0.05), short(0.03)])?.says).toContain('less right');
    const passed = find([0, 0, short(0.005), short(0.01)])!;
    expect(passed.decision).toBe('pass');
    expect(passed.value).toBeCloseTo(0.01, 4);
    expect(passed.says).toBe('The left stick reaches as far on all sides to within 1.0 % ± 0.0 %.');
  });

  it('takes a side that is proven, and not a larger one that a tilted seat explains', () => {
    // Along x waves hide which of the two it is, along y nothing does.
    const v = [-0.12, 0, 0, short(0.03)] as const;
    const [usual, sharp] = [outlineSeen(v, spreadOf(0.002)), outlineSeen(v, SHARP)];
    const outline: Outline = {
      ...usual,
      variance: ({ centreX = 0, xPlus = 0, centreY = 0, yPlus = 0 }) =>
        usual.variance({ centreX, xPlus }) + sharp.variance({ centreY, yPlus }),
    };
    const subject = makeSubject({ report: { rest: known }, subject: { outline } });
    const { x, y } = suspectsOf(subject, defaultLimits)!;
    expect([x.isFault, y.isFault]).toEqual([false, true]);
    // Of the larger one next to nothing is left beside the seat.
    expect(x.value).toBeLessThan(0.01);
    const found = findShortRange(subject, defaultLimits)!;
    expect(found.says).toContain('3.0 % ± 0.0 % less up than on the other side: its range is short there.');
    expect(found.decision).toBe('fail');
  });

  it('leaves an axis that a sensor clips to that, and is absent where both are', () => {
    const v = [0, 0, short(0.06), 0] as const;
    expect(find(v, SHARP, { pinned: [pinned('x')] })).toMatchObject({ decision: 'pass' });
    expect(find(v, SHARP, { pinned: [pinned('x'), pinned('y')] })).toBeNull();
    expect(find(v, SHARP, { pinned: [pinned('x'), pinned('y')], domain: 'reported' })?.decision).toBe('fail');
  });

  it('allows a pad’s own mapping 3 % more, and says so', () => {
    const at = (share: number) => find([0, 0, short(share), 0], SHARP, { domain: 'reported' })!;
    expect([0.0425, 0.0415].map((share) => at(share).decision)).toEqual(['fail', 'pass']);
    expect(at(0.05).limit).toBeCloseTo(0.042, 12);
    expect(at(0.05).against.at(-1)).toContain("The counts come after the pad's own mapping");
  });

  it('is a caution where a seat that is not flat is the likelier one', () => {
    const usual = spreadOf(0.002);
    const side = find([-0.036, 0, short(0.016), 0], usual)!;
    expect(side).toMatchObject({ decision: 'fail', severity: 'fault' });
    expect(side.says).toMatch(/short there, with odds of \d+(\.\d)? to 1 against a seat that is not flat/);
    expect(side.for).toEqual([]);
    const second = find([-0.048, 0, 0, 0], usual)!;
    expect(second).toMatchObject({ decision: 'fail', severity: 'caution' });
    expect(second.says).toMatch(/with odds of 1 to \d+(\.\d)? against a seat that is not flat/);
  });

  it('cannot say where more than 5 % of a side is hidden', () => {
    const hidden = { first: 0.03 ** 2, side: 0.03 ** 2 };
    const { sideU } = posterior(hidden, REST, { ...SOUND, side: FAULTY.side }, [0, 0]);
    expect(sideU).toBeGreaterThan(0.05);
    expect(find([0, 0, short(0.3), 0], hidden)).toMatchObject({ decision: 'cannot say', severity: 'note' });
    expect(find([0, 0, short(0.3), 0], hidden)?.u95).toBeCloseTo(sideU, 9);
  });
});
