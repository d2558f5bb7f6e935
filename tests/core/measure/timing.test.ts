import { describe, expect, it } from 'vitest';
import { measureLog } from '../../../core/measure/timing.ts';
import { makeTrack } from '../../support/make-track.ts';

describe('measureLog', () => {
  it('states rate and intervals of the reports as they were received', () => {
    const times = Array.from({ length: 101 }, (_, index) => 8000 * index + 500);
    times[100] = 800_500 + 12_000;
    const log = measureLog(makeTrack({ reportTimes: times, duplicates: 7 }));
    expect(log).toMatchObject({ durationUs: 812_000, reports: 101, duplicates: 7, lost: null, stage: null });
    expect(log.rateHz).toBeCloseTo(100 / 0.812, 9);
    expect(log.interval).toEqual({ p50Us: 8000, p95Us: 8000, p99Us: expect.closeTo(8120, 6) as number, maxUs: 20_000 });
  });

  it('counts losses only where the log counts them all', () => {
    const gap = (lost: number | null) => ({ t: 0, lost });
    const lost = (...gaps: { t: number; lost: number | null }[]) => measureLog(makeTrack({ gaps })).lost;
    expect(lost()).toBeNull();
    expect(lost(gap(3), gap(4))).toBe(7);
    expect(lost(gap(3), gap(null))).toBeNull();
  });

  it('states no rate without two reports', () => {
    for (const reportTimes of [[], [5]]) {
      const log = measureLog(makeTrack({ reportTimes }));
      expect(log).toMatchObject({ durationUs: 0, reports: reportTimes.length, rateHz: null, interval: null });
    }
  });

  it('says how many reports could not be decoded, and why', () => {
    const problem = { code: 'report-too-short', says: 'The report is too short.' };
    const track = { ...makeTrack({}), unread: { reports: 3, first: problem } };
    expect(measureLog(track).unread).toEqual({ reports: 3, says: problem.says });
    expect(measureLog(makeTrack({})).unread).toBeNull();
  });

  it('calls counts sensor counts only where the log says so and a profile decodes it', () => {
    const domain = (log: 'sensor' | 'reported', layout: 'sensor' | 'reported') =>
      measureLog(makeTrack({ headerDomain: log, layoutDomain: layout })).domain;
    expect(domain('sensor', 'sensor')).toBe('sensor');
    expect(domain('reported', 'sensor')).toBe('reported');
    expect(domain('sensor', 'reported')).toBe('reported');
  });
});
