/** Told twins of what recordings without capture marks hold: each states what is true of it and no more. */
import { describe, expect, it } from 'vitest';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { createChance } from '../../../core/simulate/chance.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };
const out = { x: 3200, y: 2048 };

function judged(track: Track) {
  const report = judgeTrack(track, null);
  return { left: report.sticks.left!, finding: (id: string) => report.findings.find((one) => one.id === id) };
}

/** Readings of the left stick that differ from the one before, as a pad reports that tells changes only. */
function onChange(track: Track): Track {
  const left = track.sticks.left!;
  const keep = (_: number, i: number): boolean => i === 0 || left.x[i] !== left.x[i - 1] || left.y[i] !== left.y[i - 1];
  const wanted = <T extends Float64Array | Uint8Array>(column: T): T => column.filter(keep) as T;
  const { t, x, y, buttonDown } = left;
  const sticks = { left: { ...left, t: wanted(t), x: wanted(x), y: wanted(y), buttonDown: wanted(buttonDown) } };
  return { ...track, sticks, reportTimes: sticks.left.t };
}

describe('a stick that nobody touched', () => {
  it('far off the middle says where it lay, and that no release shows whether it returns there', () => {
    const { left, finding } = judged(new StickStory().hold(3, { x: 2400, y: 2048 }).track());
    expect(left.rest).toMatchObject({ releases: 0, point: { x: 2400, y: 2048 } });
    expect(left.rest?.u95.x).toBeNull();
    expect(finding('off-centre-part')).toMatchObject({ decision: 'cannot say', u95: null });
    expect(finding('off-centre-part')?.says).toContain('where it lay untouched');
    expect(left.lacks.map(({ code }) => code)).toContain('stick-never-moved');
  });

  it('that goes to and fro between two counts has noise below its step, not noise and not none', () => {
    const told = new StickStory().move(3, (s) => ({ x: 2048 + (Math.round(s * 1000) % 7 === 0 ? 1 : 0), y: 2048 }));
    const { left, finding } = judged(told.track());
    expect(left.rest?.noiseBelowStep).toEqual({ x: true, y: true });
    expect(left.rest?.noise?.y).toBeNull();
    expect(finding('noisy-joint')?.says).toContain('within a step of its counts');
    expect(finding('noisy-joint')?.for).toEqual([]);
  });

  it('and is restless fails by its noise, and says that it never settled', () => {
    const chance = createChance(3, 1);
    const told = new StickStory().move(4, () => ({ x: 2048 + Math.round(160 * chance.normal()), y: 2048 }));
    const found = judged(told.track()).finding('noisy-joint')!;
    expect(found.decision).toBe('fail');
    expect(found.for.join()).toContain('Too little of the rest settled');
  });
});

describe('a pad that reports only on change', () => {
  it('weighs its rest by time, not by the readings on the way there', () => {
    const told = new StickStory().hold(1, rest);
    for (let push = 0; push < 3; push += 1)
      told.move(0.3, (s) => ({ x: Math.round(2048 + (1100 * s) / 0.3), y: 2048 })).hold(2, { x: 2050, y: 2048 });
    // The last rest ends where the next push begins: before it nothing is reported.
    const { left } = judged(onChange(told.hold(0.01, out).track()));
    expect(left.rest?.releases).toBe(3);
    expect(left.rest?.point.x).toBeCloseTo(2050, 0);
    expect(left.rest?.noise).toBeNull();
  });
});

describe('a stick that is clicked', () => {
  it('rests where it stands without the click, however long that is held', () => {
    const told = new StickStory().hold(1, rest).hold(0.3, out).hold(1, rest);
    told.press(true).hold(5, { x: 2110, y: 2000 }).press(false).hold(0.8, rest);
    const { left } = judged(told.track());
    expect(left.rest?.point).toEqual(rest);
    expect(left.disturbance?.map(({ of }) => of)).toEqual(['click']);
  });
});

describe('one release', () => {
  it('has a point, and no number that only several prove', () => {
    const { left, finding } = judged(new StickStory().hold(0.2, out).hold(2, rest).track());
    expect(left.rest).toMatchObject({ releases: 1, u95: { x: null, y: null }, drift: null, toleranceRadius: null });
    expect(finding('rest-not-measured')?.says).toContain('One settled release');
    expect(finding('loose-return')).toBeUndefined();
  });
});

describe('a log that marks only some of what it holds', () => {
  const lacksOf = (told: StickStory): string =>
    judged(told.track())
      .left.lacks.map(({ says }) => says)
      .join(' ');
  const turns = (told: StickStory): StickStory =>
    told.move(6, (s) => ({
      x: Math.round(2048 + 1200 * Math.cos(4 * s)),
      y: Math.round(2048 - 1200 * Math.sin(4 * s)),
    }));

  it('does not say that what stands outside of its captures is not there', () => {
    const told = new StickStory().hold(1, rest).hold(0.3, out).hold(1, rest);
    const said = lacksOf(turns(told.capture('flick', () => void told.hold(0.5, rest))));
    expect(said).toContain('No rest of the left stick was captured in this log');
    expect(said).toContain('No turn of the left stick along its gate was captured in this log');
  });

  it('says of a rest capture without an end and without marked releases that none is counted', () => {
    const told = new StickStory().mark('capture', { purpose: 'rest', edge: 'begin' });
    told.hold(1, rest).hold(0.3, out).hold(1, rest).mark('glitter').hold(0.3, out).hold(1, rest);
    const { left, finding } = judged(told.track());
    expect(left.rest).toBeNull();
    expect(lacksOf(told)).toContain('marks no release, so none is counted');
    expect(finding('rest-not-measured')?.says).toContain('No settled release of the left stick was measured');
  });
});
