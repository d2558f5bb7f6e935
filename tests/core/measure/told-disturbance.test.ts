import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
import { measureDisturbance } from '../../../core/measure/disturbance.ts';
import { StickStory } from '../../support/stick-story.ts';

const places = [2048, 2050, 2046, 2049, 2047];

function withRest(told: StickStory, marked = true): StickStory {
  const releases = (): void => {
    for (const x of places) {
      told.hold(0.4, { x: 3048, y: 2048 });
      if (marked) told.mark('release');
      told.hold(1, { x, y: 2048 });
    }
  };
  if (marked) return told.capture('rest', releases);
  releases();
  return told;
}

function measured(told: StickStory, click = true) {
  const track = told.track(click);
  return measureDisturbance(track, 'left', gatherEvidence(track, 'left'));
}

describe('measureDisturbance of a told track', () => {
  it('tells the shift against the undisturbed rest, by what it was', () => {
    const told = withRest(new StickStory());
    told.capture('disturbance', () => told.hold(1.5, { x: 2060, y: 2040 }), { of: 'rumble' });
    const [one] = measured(told) ?? [];
    expect(one).toMatchObject({ of: 'rumble', shift: { x: 12, y: -8 } });
    // A single dwell scatters like the five releases: s = √2.5, t(0.975, 8 by Welch: 4.9 …) · s·√(1 + 1/5).
    expect(one?.u95?.x).toBeGreaterThan(2.3 * Math.sqrt(2.5 * 1.2));
    expect(one?.u95?.x).toBeLessThan(2.8 * Math.sqrt(2.5 * 1.2));
    // Of an axis whose rests do not differ the count step is left, on either side.
    expect(one?.u95?.y).toBeCloseTo(1.96 / Math.sqrt(6), 3);
  });

  it('takes a click, in which a button is down, by the dwells that were marked', () => {
    const told = withRest(new StickStory());
    told.capture(
      'disturbance',
      () => {
        for (let press = 0; press < 2; press += 1) {
          told.press(true).hold(0.2, { x: 2048, y: 2048 });
          told.mark('dwell', { edge: 'begin' }).hold(0.5, { x: 2078, y: 2048 }).mark('dwell', { edge: 'end' });
          told.press(false).hold(0.3, { x: 2048, y: 2048 });
        }
      },
      { of: 'click' },
    );
    expect(measured(told)?.[0]).toMatchObject({ of: 'click', shift: { x: 30, y: 0 } });
  });

  it('keeps a word that it does not know, and says where none was written', () => {
    const told = withRest(new StickStory());
    told.capture('disturbance', () => told.hold(1.5, { x: 2050, y: 2048 }), { of: 'magnet near' });
    told.capture('disturbance', () => told.hold(1.5, { x: 2050, y: 2048 }));
    expect(measured(told)?.map(({ of }) => of)).toEqual(['magnet near', 'not said']);
  });

  it('finds the click that bends the rest in a log without marks, and does not take it for the rest', () => {
    const told = withRest(new StickStory(), false);
    told.press(true).hold(4, { x: 2098, y: 2048 }).press(false).hold(0.2, { x: 2048, y: 2048 });
    const track = told.track();
    const evidence = gatherEvidence(track, 'left');
    expect(evidence.captures).toBe('inferred');
    for (const { point } of evidence.rest?.dwells ?? []) expect(Math.abs(point.x - 2048)).toBeLessThan(3);
    expect(measured(told)?.[0]).toMatchObject({ of: 'click' });
    expect(measured(told)?.[0]?.shift.x).toBeCloseTo(50, 6);
    expect(measured(told, false)?.[0]?.of).toBe('button 11 held');
  });

  it('is null where nothing was disturbed or no rest is known', () => {
    expect(measured(withRest(new StickStory()))).toBeNull();
    const told = new StickStory();
    told.capture('disturbance', () => told.hold(1, { x: 2048, y: 2048 }), { of: 'rumble' });
    expect(measured(told)).toBeNull();
  });
});
