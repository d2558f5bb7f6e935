/** Findings on the part itself, its wires and its spring: pass, fail, cannot say. */
import { describe, expect, it } from 'vitest';
import { findDeadAxis } from '../../../core/findings/find-dead-axis.ts';
import { findLooseReturn } from '../../../core/findings/find-loose-return.ts';
import { findNoisyJoint } from '../../../core/findings/find-noisy-joint.ts';
import { findOvershoot } from '../../../core/findings/find-overshoot.ts';
import { findInverted, findSwapped } from '../../../core/findings/find-wiring.ts';
import { findWornTrack } from '../../../core/findings/find-worn-track.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { PromptedWays } from '../../../core/findings/prompted-ways.ts';
import { HALF, makeSubject, makeTravel, soundTravel } from './make-subject.ts';

const limits = defaultLimits;

describe('noisy joint', () => {
  const at = (noise: number) => findNoisyJoint(makeSubject({ noise }), limits)?.decision;

  it('fails, passes and cannot say by the restlessness at rest', () => {
    expect(at(4)).toBe('fail');
    expect(at(1.2)).toBe('pass');
    expect(at(limits.noise.value * HALF)).toBe('cannot say');
    expect(findNoisyJoint(makeSubject({ releases: 0 }), limits)).toBeNull();
  });
});

describe('noise that keeps the stick from settling', () => {
  it('is found all the same, and not taken for a healthy rest', () => {
    const at = (unsettled: { x: number; y: number }) =>
      findNoisyJoint(makeSubject({ releases: 0, subject: { unsettled } }), limits);
    expect(at({ x: 12, y: 1.2 })).toMatchObject({ decision: 'fail' });
    expect(at({ x: 12, y: 1.2 })?.for.join()).toContain('Too little of the rest settled');
    expect(at({ x: 1.2, y: 1.2 })?.decision).toBe('pass');
  });

  it('is not said of readings that stand still on coarse counts', () => {
    const half = { x: 127, y: 127 };
    const found = findNoisyJoint(makeSubject({ releases: 0, subject: { unsettled: { x: 0, y: 0 }, half } }), limits)!;
    expect(found.decision).toBe('cannot say');
    expect(found.says).toContain('stay within a step');
    expect(found.for).toEqual([]);
  });
});

describe('loose return', () => {
  const at = (scatter: number, releases = 24) => findLooseReturn(makeSubject({ scatter, releases }), limits)?.decision;

  it('fails, passes and cannot say by the scatter of the rests', () => {
    expect(at(40)).toBe('fail');
    expect(at(6)).toBe('pass');
    expect(at(limits.looseReturn.value * HALF)).toBe('cannot say');
  });

  it('says nothing of few releases', () => {
    expect(at(40, 6)).toBe('cannot say');
    expect(at(40, 1)).toBeUndefined();
  });
});

describe('dead axis', () => {
  const at = (least: number, greatest: number) =>
    findDeadAxis(
      makeSubject({ subject: { extents: { x: { least, greatest }, y: { least: 800, greatest: 3300 } } } }),
      limits,
    )?.decision;

  it('fails where one axis stays and the other moves', () => {
    expect(at(2044, 2052)).toBe('fail');
    expect(at(4095, 4095)).toBe('fail');
    expect(at(800, 3300)).toBe('pass');
    expect(at(2000, 2125)).toBe('cannot say');
  });

  it('says nothing of a stick that nobody moved, or without readings', () => {
    const still = { x: { least: 2047, greatest: 2049 }, y: { least: 2047, greatest: 2049 } };
    expect(findDeadAxis(makeSubject({ subject: { extents: still } }), limits)).toBeNull();
    expect(findDeadAxis(makeSubject({ subject: { extents: null } }), limits)).toBeNull();
  });
});

describe('swapped and inverted axes', () => {
  const both = (prompted: PromptedWays | null) => {
    const subject = makeSubject({ subject: { prompted } });
    return [findSwapped(subject, limits)?.decision, findInverted(subject, limits)?.decision];
  };

  it('fail by where pushes came out', () => {
    expect(both({ prompts: 32, astray: 0, wiring: 'as it should be', agreement: 0.99, turn: 0, turnU95: 1 })).toEqual([
      'pass',
      'pass',
    ]);
    expect(both({ prompts: 32, astray: 0.9, wiring: 'swapped', agreement: 0.99, turn: 0, turnU95: 1 })).toEqual([
      'fail',
      'pass',
    ]);
    expect(both({ prompts: 32, astray: 0.9, wiring: 'y inverted', agreement: 0.99, turn: 0, turnU95: 1 })).toEqual([
      'pass',
      'fail',
    ]);
    expect(
      both({ prompts: 32, astray: 0.9, wiring: 'swapped, x inverted', agreement: 0.99, turn: 0, turnU95: 1 }),
    ).toEqual(['fail', 'pass']);
  });

  it('cannot be told where the stick went anywhere, and are absent without prompts', () => {
    expect(both({ prompts: 32, astray: 0.9, wiring: 'swapped', agreement: 0.3, turn: 0, turnU95: 1 })).toEqual([
      'cannot say',
      'cannot say',
    ]);
    expect(both(null)).toEqual([undefined, undefined]);
  });
});

describe('worn track', () => {
  const at = (wish: Partial<typeof soundTravel>, domain: 'sensor' | 'reported' = 'sensor') =>
    findWornTrack(
      makeSubject({ report: { travel: makeTravel({ x: { ...soundTravel, ...wish } }) }, subject: { domain } }),
      limits,
    );

  it('fails for an unsteady stretch or a run of missing counts, and shows where', () => {
    const unsteady = at({ unsteady: [{ from: 1500, to: 1530, times: 9 }] })!;
    expect(unsteady.decision).toBe('fail');
    expect(unsteady.value).toBeCloseTo(31 / 2500, 6);
    expect(unsteady.shows.counts).toEqual([{ axis: 'x', from: 1500, to: 1530 }]);
    expect(at({ missing: 20, longestRun: 20, runs: [{ from: 1500, to: 1519 }] })?.decision).toBe('fail');
  });

  it('counts a stretch that is both once, and one that is half as unsteady for a quarter', () => {
    const found = at({ unsteady: [{ from: 1500, to: 1530, times: 9 }], runs: [{ from: 1510, to: 1519 }], missing: 10 });
    expect(found?.value).toBeCloseTo(10 / 2500, 6);
    expect(at({ unsteady: [{ from: 1500, to: 1539, times: 4 }] })?.value).toBeCloseTo(10 / 2500, 6);
  });

  it('passes a sound axis and single missing counts, and cannot say at the limit', () => {
    expect(at({})?.decision).toBe('pass');
    expect(at({ missing: 5, runs: [{ from: 1500, to: 1500 }] })?.decision).toBe('pass');
    expect(at({ unsteady: [{ from: 1500, to: 1504, times: 8 }] })?.decision).toBe('cannot say');
  });

  it("counts only what goes back after the pad's own mapping, whose corners look unsteady and which leaves counts out", () => {
    const worn = { unsteady: [{ from: 1500, to: 1530, times: 9 }], missing: 40, runs: [{ from: 1700, to: 1739 }] };
    expect(at(worn)?.value).toBeCloseTo(71 / 2500, 6);
    expect(at(worn, 'reported')).toMatchObject({ decision: 'pass', value: 0 });
    expect(at(worn, 'reported')?.says).toContain('travel of the left stick goes back in sweep after sweep: no wear');
    const wish = { ...worn, backwardsAt: [{ from: 1600, to: 1630, sweeps: 4 }] };
    const found = at(wish, 'reported')!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(31 / 2500, 6);
    const unswept = { ...soundTravel, backwardsAt: null };
    const subject = makeSubject({ report: { travel: makeTravel({ x: unswept, y: unswept }) } });
    expect(findWornTrack({ ...subject, domain: 'reported' }, limits)).toBeNull();
  });

  it('is not concluded without sweeps, or where they are too sparse', () => {
    expect(findWornTrack(makeSubject(), limits)).toBeNull();
    const sparse = { ...soundTravel, unsteady: null, missing: null };
    expect(findWornTrack(makeSubject({ report: { travel: makeTravel({ x: sparse, y: sparse }) } }), limits)).toBeNull();
  });
});

describe('overshoot', () => {
  const at = (largest: number, mean: number, count = 4) => {
    const flick = {
      count,
      unread: 0,
      overshoot: { largest, mean },
      overshootCounts: { largest: HALF * largest, mean: HALF * mean },
      settlingUs: { p50: 40_000, max: 60_000 },
      band: { x: 5, y: 5 },
      at: [1e6, 2e6, 3e6, 4e6],
    };
    return findOvershoot(makeSubject({ report: { flick } }), limits);
  };

  it('fails past the usual zone, passes within it, and cannot say where the flicks differ that much', () => {
    const found = at(0.15, 0.14)!;
    expect(found.decision).toBe('fail');
    expect(found.shows.spans).toHaveLength(4);
    expect(at(0.01, 0.005)?.decision).toBe('pass');
    expect(at(0.08, 0.03)?.decision).toBe('cannot say');
  });

  it('is absent without flicks', () => {
    expect(at(0, 0, 0)).toBeNull();
    expect(findOvershoot(makeSubject(), limits)).toBeNull();
  });
});
