/** Whole logs judged: the demos as a survey records them, and logs that prove little or nothing. */
import { describe, expect, it } from 'vitest';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { findingsTable } from '../../../core/findings/findings-table.ts';
import { judgeTrack, type MeasureReport } from '../../../core/findings/judge-track.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { demos, type DemoName } from '../../../core/simulate/demos.ts';
import { surveyUnit } from '../../blind/survey-unit.ts';
import { HandScript, trackOf, twelveBits } from '../capture/guide/hand-script.ts';

function surveyed(name: DemoName, intervalMicros = 4000): MeasureReport {
  return judgeTrack(surveyUnit({ ...demos[name].build, intervalMicros, jitterMicros: 90 }, 3), null);
}

/** Failed findings of the left stick, in order. */
function failedOf({ findings }: MeasureReport): string[] {
  return findings.filter(({ decision, stick }) => decision === 'fail' && stick === 'left').map(({ id }) => id);
}

/** Every number anywhere in what is printed. */
function expectNoBadNumber(report: MeasureReport): void {
  const look = (value: unknown, at: string): void => {
    if (typeof value === 'number') expect(Number.isFinite(value), at).toBe(true);
    else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) look(inner, `${at}.${key}`);
  };
  look(report.findings, 'findings');
}

describe('the demos, surveyed', () => {
  it('keeps the healthy stick and calls nothing of it faulty', () => {
    const report = surveyed('healthy');
    expect(failedOf(report)).toEqual([]);
    expect(report.verdict.left).toBe('keep');
    expect(report.verdictWhy.left).toContain('within');
  });

  it('names what is wrong with the others first', () => {
    expect(failedOf(surveyed('off-centre'))[0]).toBe('off-centre-part');
    expect(failedOf(surveyed('short-range'))[0]).toBe('short-range');
    expect(failedOf(surveyed('stale'))[0]).toBe('stale-mapping');
    expect(failedOf(surveyed('turned')).slice(0, 2).toSorted()).toEqual(['skewed-part', 'turned-part']);
    expect(failedOf(surveyed('loose'))).toEqual(expect.arrayContaining(['loose-return', 'overshoot']));
    // So restless a stick settles by its mean of 100 ms only where there are enough readings in it.
    expect(failedOf(surveyed('worn', 1000))).toEqual(expect.arrayContaining(['worn-track', 'seat-not-flat']));
  });

  it('says what to do: recalibrate, reseat or replace', () => {
    expect(surveyed('off-centre').verdict.left).toBe('recalibrate');
    expect(surveyed('stale').verdict.left).toBe('recalibrate');
    expect(surveyed('short-range').verdict.left).toBe('reseat');
    expect(surveyed('loose').verdict.left).toBe('replace');
  });

  it("concludes nothing of the sensor after the pad's own mapping", () => {
    const ids = surveyed('plain').findings.map(({ id }) => id);
    for (const id of ['clipped-sensor', 'stale-mapping']) expect(ids).not.toContain(id);
  });

  it('holds what is measured against limits of one’s own', () => {
    const strict = { ...defaultLimits, noise: { ...defaultLimits.noise, value: 0.0001 } };
    const track = surveyUnit({ ...demos.healthy.build, intervalMicros: 4000 }, 3);
    expect(failedOf(judgeTrack(track, null, strict))).toContain('noisy-joint');
  });

  it('is told as a table: the verdict first, then what fails with its reasons', () => {
    const [verdict, first, ...others] = findingsTable(surveyed('stale'));
    expect(verdict?.title).toBe('verdict');
    expect(verdict?.rows[0]?.value).toContain('recalibrate');
    expect(first?.title).toBe('left stick, stale mapping: caution');
    expect(first?.rows.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['says', 'value', 'limit', 'cause', 'next']),
    );
    expect(others.at(-1)?.title).toBe('findings that pass');
  });
});

describe('a log that proves little', () => {
  const script = (): HandScript =>
    new HandScript({ fields: twelveBits, rest: { x: 2048, y: 2048 }, gate: () => 1250, noise: 1 });
  const undecided = (track: Track): MeasureReport => {
    const report = judgeTrack(track, null);
    expect(report.verdict.left).toBe('undecided');
    expect(report.findings.filter(({ decision, severity }) => decision === 'fail' && severity === 'fault')).toEqual([]);
    expect(report.findings.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['rest-not-measured', 'rim-not-covered']),
    );
    expect(report.verdictWhy.left?.length).toBeGreaterThan(10);
    expectNoBadNumber(report);
    return report;
  };
  const stickOf = (xs: readonly number[], ys: readonly number[]) => ({
    fields: twelveBits,
    t: Float64Array.from(xs, (_, i) => 4000 * i),
    x: Float64Array.from(xs),
    y: Float64Array.from(ys),
    buttonDown: new Uint8Array(xs.length),
  });

  it('is undecided for constant data, two readings, one reading and none', () => {
    const constant = Array.from({ length: 2000 }, () => 2048);
    undecided(trackOf({ left: stickOf(constant, constant) }));
    undecided(trackOf({ left: stickOf([100, 4000], [4000, 100]) }));
    undecided(trackOf({ left: stickOf([2048], [2048]) }));
    undecided(trackOf({ left: stickOf([], []) }));
  });

  it('is undecided where readings are no numbers', () => {
    const none = Array.from({ length: 1000 }, () => Number.NaN);
    undecided(trackOf({ left: stickOf(none, none) }));
  });

  it('is undecided for half of the gate, over and over, and names what is open', () => {
    const hand = script().mark('capture', { purpose: 'rim', stick: 'left', edge: 'begin' }).push(0);
    for (let n = 0; n < 6; n += 1) hand.turn(180).turn(-180);
    const { track } = hand.mark('capture', { purpose: 'rim', stick: 'left', edge: 'end' }).letGo().stay(1);
    const report = undecided(track);
    expect(report.findings.find(({ id }) => id === 'rim-not-covered')?.decision).toBe('cannot say');
    for (const id of ['seat-not-flat', 'short-range', 'skewed-part'])
      expect(report.findings.some((one) => one.id === id && one.decision !== 'cannot say')).toBe(false);
  });

  it('is undecided for a capture that holds only a gap', () => {
    const { track } = script()
      .stay(0.2)
      .mark('capture', { purpose: 'rest', stick: 'left', edge: 'begin' })
      .lose(20)
      .mark('capture', { purpose: 'rest', stick: 'left', edge: 'end' })
      .stay(0.2);
    undecided(track);
  });

  it('says that a mapping file is of another pad, and decides nothing under it', () => {
    const track = surveyUnit({ ...demos.healthy.build, intervalMicros: 4000, jitterMicros: 300 }, 4);
    const own = demos.healthy.build.firmware;
    const other = { vendorId: 7, productId: 7, serial: null, unit: null };
    const report = judgeTrack(track, own, defaultLimits, other);
    expect(report.findings.find(({ stick }) => stick === 'left')?.id).toBe('mapping-of-another-pad');
    expect(report.verdict.left).toBe('undecided');
    expect(judgeTrack(track, own, defaultLimits, track.header.pad).verdict.left).toBe('keep');
  });
});
