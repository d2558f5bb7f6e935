import { describe, expect, it } from 'vitest';
import type { StickTrack, Track } from '../../../core/capture/evidence/track.ts';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { makeSurveyTrack } from '../../support/make-survey-track.ts';
import { reportedFields } from '../../support/fields.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

const wish = { fields: reportedFields, rest: { x: 130, y: 124 }, gate: 110, releases: 12, turnsEachWay: 3 };

function changed(track: Track, change: (left: StickTrack) => Partial<StickTrack>): Track {
  const left = track.sticks.left!;
  return { ...track, sticks: { left: { ...left, ...change(left) } } };
}

/** What measure says of it, as JSON holds it; a number that JSON cannot write fails the test. */
function leftOf(track: Track) {
  JSON.stringify(measureTrack(track, null), (_, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${value} is no measure`);
    return value;
  });
  return measureTrack(track, null).sticks.left!;
}

describe('measureTrack of bad input', () => {
  it('states no extent, noise or step of an axis that never moves', () => {
    const track = changed(makeSurveyTrack(wish), ({ x }) => ({ x: x.map(() => 130) }));
    const { rest, travel } = leftOf(track);
    expect(travel?.x).toBeNull();
    expect(rest?.noise?.x ?? null).toBeNull();
  });

  it('states nothing but a place where all readings are equal', () => {
    const still = changed(makeSurveyTrack({ ...wish, marked: false }), ({ x, y }) => ({
      x: x.map(() => 130),
      y: y.map(() => 124),
    }));
    const left = leftOf(still);
    expect(left).toMatchObject({ rim: null, travel: null, flick: null, disturbance: null, warmUp: null });
    expect(left.rest).toMatchObject({ releases: 0, point: { x: 130, y: 124 }, toleranceRadius: null, drift: null });
    expect(left.allan).toMatchObject({ x: null, y: null });
    expect(left.lacks.length).toBeGreaterThan(0);
  });

  it('states no tolerance, drift or hysteresis from two releases', () => {
    const { rest } = leftOf(makeSurveyTrack({ ...wish, releases: 2, turnsEachWay: 0 }));
    expect(rest).toMatchObject({ releases: 2, toleranceRadius: null, drift: null });
  });

  it('writes no NaN where single readings tell nothing', () => {
    const holed = changed(makeSurveyTrack(wish), ({ x }) => ({ x: x.map((u, i) => (i % 997 === 0 ? Number.NaN : u)) }));
    expect(() => leftOf(holed)).not.toThrow();
  });

  it('covers no direction by a turn over half of the gate', () => {
    const whole = makeSurveyTrack({ ...wish, releases: 0, turnsEachWay: 1 });
    const end = 1500;
    const half = changed(
      { ...whole, reportTimes: whole.reportTimes.slice(0, end), marks: whole.marks.filter(({ t }) => t < 1000 * end) },
      ({ t, x, y, buttonDown }) => ({
        t: t.slice(0, end),
        x: x.slice(0, end),
        y: y.slice(0, end),
        buttonDown: buttonDown.slice(0, end),
      }),
    );
    const { rim } = leftOf(half);
    expect(rim?.directions.filter((one) => one.covered) ?? []).toEqual([]);
    expect(rim?.leastReach ?? null).toBeNull();
    expect(rim?.roundness ?? null).toBeNull();
  });

  it('states nothing of captures that hold only a gap', () => {
    const bench = new SimulatedBench(soundBut(() => ({})));
    for (const purpose of ['rest', 'rim', 'travel', 'flick', 'disturbance'])
      bench.capture(purpose, () => {
        bench.mark('release');
        bench.mark('toward', { angle: 0 });
        bench.lose(2);
      });
    bench.mark('warmUp', { edge: 'begin' });
    bench.lose(2);
    bench.mark('warmUp', { edge: 'end' });
    const left = leftOf(bench.track());
    expect(left).toMatchObject({ rest: null, travel: null, flick: null, disturbance: null, warmUp: null, allan: null });
    expect(left.rim?.leastReach ?? null).toBeNull();
    expect(left.lacks.length).toBeGreaterThan(0);
  });
});
