/** Findings on what is stored, on the whole pad and on what the log is too thin for. */
import { describe, expect, it } from 'vitest';
import { findDisturbedRest } from '../../../core/findings/find-disturbed-rest.ts';
import { findInputs } from '../../../core/findings/find-inputs.ts';
import { findLateReports } from '../../../core/findings/find-late-reports.ts';
import { findLayers } from '../../../core/findings/find-layers.ts';
import { findRestMissing, findRimUncovered } from '../../../core/findings/find-missing.ts';
import { findOtherPad } from '../../../core/findings/find-other-pad.ts';
import { findStaleMapping } from '../../../core/findings/find-stale-mapping.ts';
import { findWarmingUp } from '../../../core/findings/find-warming-up.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import type { InputsMeasure } from '../../../core/measure/inputs-measure.ts';
import { fittingMapping, HALF, makeSubject } from './make-subject.ts';

const limits = defaultLimits;

/** The fitting mapping with one axis changed, in counts. */
function changedX(by: { min?: number; centre?: number; max?: number }): StickMapping {
  const { min, centre, max } = fittingMapping.x;
  return {
    ...fittingMapping,
    x: { min: min + (by.min ?? 0), centre: centre + (by.centre ?? 0), max: max + (by.max ?? 0) },
  };
}

describe('stale mapping', () => {
  const at = (mapping: StickMapping, wish = {}) => findStaleMapping(makeSubject({ mapping, ...wish }), limits);

  it('fails for a centre, an edge too far out and an edge too far in, and names which', () => {
    expect(at(changedX({ centre: 80 }))).toMatchObject({ decision: 'fail' });
    expect(at(changedX({ centre: 80 }))?.for.join()).toContain('only the stored numbers');
    const out = at(changedX({ max: 90 }))!;
    expect(out.decision).toBe('fail');
    expect(out.says).toContain('short');
    expect(out.shows.directions).toContain(0);
    expect(at(changedX({ min: 90 }))?.says).toContain('further');
  });

  it('says of no side that it falls short where one of its directions is not covered, and of each that goes further', () => {
    const open = { radius: (degrees: number) => (degrees === 5 || degrees === 180 ? null : 1) };
    expect(at(changedX({ max: 90 }), open)?.decision).toBe('pass');
    expect(at(changedX({ min: 90 }), open)?.says).toContain('further');
    expect(at(changedX({ max: 90 }), { radius: (degrees: number) => (degrees === 45 ? null : 1) })?.decision).toBe(
      'fail',
    );
  });

  it('passes what fits and cannot say at the limit', () => {
    expect(at(fittingMapping)?.decision).toBe('pass');
    expect(at(changedX({ centre: Math.round(limits.stale.value * 1225) }))?.decision).toBe('cannot say');
  });

  it('is not concluded without a mapping of its own, in the reported domain, or without a rest', () => {
    expect(at(changedX({ centre: 80 }), { report: { mappingFrom: 'range' } })).toBeNull();
    expect(at(changedX({ centre: 80 }), { subject: { domain: 'reported' } })).toBeNull();
    expect(at(changedX({ centre: 80 }), { releases: 0 })).toBeNull();
  });
});

describe('layers that disagree', () => {
  const at = (user: StickMapping | null) =>
    findLayers(makeSubject({ subject: { layers: { user, factory: fittingMapping } } }), limits);

  it('fails beyond a nudge, passes within, cannot say at the limit, and is absent with one layer', () => {
    const found = at(changedX({ max: -100 }))!;
    expect(found.decision).toBe('fail');
    expect(found.says).toContain('100 counts below');
    expect(at(changedX({ max: 10 }))?.decision).toBe('pass');
    expect(at(changedX({ max: limits.layers.value * HALF }))?.decision).toBe('cannot say');
    expect(at(null)).toBeNull();
  });
});

describe('inputs that fail', () => {
  const button = (usage: number, bounceMs: number | null, wish = {}) => ({
    usage,
    pressed: bounceMs !== null,
    released: bounceMs !== null,
    bounceMs,
    ...wish,
  });
  const inputs = (buttons: InputsMeasure['buttons'], triggers: InputsMeasure['triggers'] = {}): InputsMeasure => ({
    buttons,
    hat: null,
    triggers,
    clicks: {},
  });
  const at = (measured: InputsMeasure | null, intervalUs: number | null = 1000, captured = true) =>
    findInputs(measured, intervalUs, captured, limits);

  it('fail for a long bounce, a button that never comes up and a trigger that ends early', () => {
    expect(at(inputs([button(1, 0), button(2, 14)]))).toMatchObject({ decision: 'fail', value: 14, stick: null });
    expect(at(inputs([button(1, 0, { released: false })]))?.says).toContain('never came up');
    const trigger = { min: 0, max: 180, back: 0, fieldMinimum: 0, fieldMaximum: 255 };
    expect(at(inputs([button(1, 0)], { left: trigger }))?.decision).toBe('fail');
  });

  it('say nothing of a button that is held all along, and name one that is down at the end', () => {
    const held = button(11, 0, { released: false });
    expect(at(inputs([held, button(2, null)]), 1000, false)).toBeNull();
    const found = at(inputs([button(1, 0), held, button(2, null)]), 1000, false)!;
    expect(found).toMatchObject({ decision: 'pass' });
    expect(found.says).toContain('1 of 3 buttons');
    expect(found.against).toEqual(['Still down at the end: 11.', 'Not seen pressed: 2.']);
  });

  it('say that reports far apart would not show a bounce', () => {
    const found = at(inputs([button(1, 0)]), 8000)!;
    expect(found.decision).toBe('cannot say');
    expect(found.says).toContain('8.0 ms apart');
  });

  it('pass where they are clean, and name what nobody pressed', () => {
    const found = at(inputs([button(1, 0), button(2, null)]))!;
    expect(found.decision).toBe('pass');
    expect(found.against.join()).toContain('Not seen pressed: 2');
  });

  it('cannot be told near the limit, without a known interval, or where nothing was pressed', () => {
    expect(at(inputs([button(1, 5)]))?.decision).toBe('cannot say');
    expect(at(inputs([button(1, 14)]), null)?.decision).toBe('cannot say');
    expect(at(inputs([button(1, null)]))?.decision).toBe('cannot say');
    expect(at(null)).toBeNull();
    expect(at(inputs([button(1, null)]), 1000, false)).toBeNull();
  });
});

describe('disturbed rest', () => {
  const at = (x: number, u95: { x: number; y: number } | null = { x: 2, y: 2 }) => {
    const disturbance = [{ of: 'click', shift: { x, y: 0 }, u95, startUs: 1, endUs: 2 }];
    return findDisturbedRest(makeSubject({ report: { disturbance } }), limits);
  };

  it('fails, passes and cannot say by the largest shift', () => {
    expect(at(60)).toMatchObject({ decision: 'fail', severity: 'caution' });
    expect(at(60)?.says).toContain('clicked');
    expect(at(4)?.decision).toBe('pass');
    expect(at(limits.disturbed.value * HALF)?.decision).toBe('cannot say');
    expect(at(60, null)?.decision).toBe('cannot say');
    expect(findDisturbedRest(makeSubject(), limits)).toBeNull();
  });
});

describe('warming up', () => {
  const drift = { x: 0.3, y: 0, u95: { x: 0.05, y: 0.05 } };
  const at = (steady: boolean | null) =>
    findWarmingUp(makeSubject({ report: { warmUp: { dwells: 12, drift, last: null, steady, seconds: 90 } } }), limits);

  it('follows what is significant, and says nothing where nothing was recorded', () => {
    expect(at(false)).toMatchObject({ decision: 'fail' });
    expect(at(true)?.decision).toBe('pass');
    expect(at(null)?.decision).toBe('cannot say');
    expect(findWarmingUp(makeSubject(), limits)).toBeNull();
  });
});

describe('mapping of another pad', () => {
  const here = { vendorId: 1, productId: 2, serial: 'a', unit: null };
  const file = makeSubject({ report: { mappingFrom: 'file' } });

  it('fails where the file names another pad, or nothing fits at all', () => {
    expect(findOtherPad(file, here, { ...here, productId: 3 }, limits)).toMatchObject({ decision: 'fail' });
    expect(findOtherPad(file, here, { ...here, serial: 'b' }, limits)).toMatchObject({ decision: 'fail' });
    expect(findOtherPad(file, here, { ...here, serial: null }, limits)).toBeNull();
    const narrow = { min: 100, centre: 128, max: 155 };
    const far = makeSubject({ mapping: { x: narrow, y: narrow } });
    expect(findOtherPad(far, here, null, limits)?.decision).toBe('fail');
  });

  it('is absent where they belong together, or no mapping is known', () => {
    expect(findOtherPad(file, here, here, limits)).toBeNull();
    expect(findOtherPad(file, here, null, limits)).toBeNull();
    expect(findOtherPad(makeSubject({ report: { mappingFrom: 'range' } }), here, null, limits)).toBeNull();
  });
});

describe('what the log is too thin for', () => {
  it('is said of few releases, and is no fault', () => {
    const found = findRestMissing(makeSubject({ releases: 5 }), limits)!;
    expect(found).toMatchObject({ decision: 'cannot say', severity: 'caution', value: 5 });
    expect(findRestMissing(makeSubject({ releases: 0 }), limits)?.says).toContain('No settled release');
    expect(findRestMissing(makeSubject(), limits)).toBeNull();
  });

  it('names the directions that are not covered', () => {
    const gap = (degrees: number): number | null => (degrees >= 100 && degrees <= 130 ? null : 1);
    const found = findRimUncovered(makeSubject({ radius: gap }), limits)!;
    expect(found.says).toContain('100° to 130°');
    expect(found.shows.directions).toEqual([100, 105, 110, 115, 120, 125, 130]);
    const overZero = (degrees: number): number | null => (degrees >= 345 || degrees <= 10 ? null : 1);
    expect(findRimUncovered(makeSubject({ radius: overZero }), limits)?.says).toContain('345° to 10°');
    expect(findRimUncovered(makeSubject({ radius: null }), limits)?.says).toContain('any direction');
  });

  it('lets single directions go', () => {
    expect(findRimUncovered(makeSubject({ radius: (degrees) => (degrees === 40 ? null : 1) }), limits)).toBeNull();
    expect(findRimUncovered(makeSubject(), limits)).toBeNull();
  });
});

describe('late reports', () => {
  const at = (p99Us: number, wish = {}) =>
    findLateReports(
      {
        durationUs: 1e7,
        reports: 10_000,
        lost: null,
        rateHz: 1000,
        domain: 'sensor',
        stage: null,
        interval: { p50Us: 1000, p95Us: 1100, p99Us, maxUs: 9000 },
        duplicates: 30,
        damaged: 0,
        ended: null,
        unread: null,
        ...wish,
      },
      limits,
    );

  it('fail, pass and cannot be told by the slowest in a hundred', () => {
    expect(at(6000)?.decision).toBe('fail');
    expect(at(1200)?.decision).toBe('pass');
    expect(at(3000)?.decision).toBe('cannot say');
  });

  it('are not held against a pad that reports only changes, or a short log', () => {
    expect(at(60_000, { duplicates: 0 })?.decision).toBe('cannot say');
    expect(at(6000, { reports: 50 })).toBeNull();
    expect(at(6000, { interval: null })).toBeNull();
  });
});
