import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findSignalLosses } from '../../../../core/capture/evidence/signal-losses.ts';
import type { StickTrack } from '../../../../core/capture/evidence/track.ts';
import type { Pair } from '../../../../core/pad/stick.ts';
import { StickStory } from '../../../support/stick-story.ts';

const right = { x: 3298, y: 2048 };
const left = { x: 798, y: 2048 };
/** Half travels: 1250 counts of x; y stands still, so that a third of its half range is taken, 614.25 counts. */
const HALF = 1250;

/** Two seconds at the right gate and at the left one, slowly over between them: readings 0 … 2000 stand right. */
function toAndFro(stepUs = 1000): StickStory {
  return new StickStory(stepUs)
    .hold(2, right)
    .move(1, (s) => ({ x: Math.round(3298 - 2500 * s), y: 2048 }))
    .hold(2, left)
    .move(1, (s) => ({ x: Math.round(798 + 2500 * s), y: 2048 }));
}

function readings(story = toAndFro()): StickTrack {
  return story.track().sticks.left!;
}

/** With other readings from an index on. */
function changed(track: StickTrack, from: number, places: readonly Pair[]): StickTrack {
  const [x, y] = [Float64Array.from(track.x), Float64Array.from(track.y)];
  places.forEach((place, i) => {
    x[from + i] = place.x;
    y[from + i] = place.y;
  });
  return { ...track, x, y };
}

const away = (counts: number, length: number): Pair[] => Array<Pair>(length).fill({ x: right.x - counts, y: right.y });
const spans = (track: StickTrack): number[][] => findSignalLosses(track).map(({ from, to }) => [from, to]);

describe('where the signal leaves the stick', () => {
  it('finds a single reading that leaps and comes back, with what stood about it', () => {
    expect(findSignalLosses(changed(readings(), 900, [{ x: 2048, y: 2048 }]))).toEqual([
      { from: 900, to: 901, startUs: 900_000, endUs: 901_000, before: right, after: right, size: 1 },
    ]);
  });

  it('takes a single reading from 6 % of the half travel on, several from 20 % on', () => {
    expect(spans(changed(readings(), 900, away(0.061 * HALF, 1)))).toEqual([[900, 901]]);
    expect(spans(changed(readings(), 900, away(0.059 * HALF, 1)))).toEqual([]);
    expect(spans(changed(readings(), 900, away(0.21 * HALF, 30)))).toEqual([[900, 930]]);
    expect(spans(changed(readings(), 900, away(0.19 * HALF, 30)))).toEqual([]);
  });

  it('measures a leap of either axis in its own half travel', () => {
    const [loss] = findSignalLosses(changed(readings(), 900, [{ x: right.x, y: 2048 + 0.5 * 614.25 }]));
    expect(loss!.size).toBeCloseTo(0.5, 12);
  });

  it('takes no single reading where reports come too seldom to tell a flick', () => {
    expect(spans(changed(readings(toAndFro(5000)), 90, away(0.15 * HALF, 1)))).toEqual([[90, 91]]);
    expect(spans(changed(readings(toAndFro(6000)), 90, away(0.15 * HALF, 1)))).toEqual([]);
  });

  it('takes a long one only where another begins or ends at the same place', () => {
    const once = changed(readings(), 300, away(HALF, 200));
    expect(spans(once)).toEqual([]);
    expect(spans(changed(once, 1000, away(HALF, 150)))).toEqual([
      [300, 500],
      [1000, 1150],
    ]);
    // The other one is at the left gate.
    expect(spans(changed(once, 3500, Array<Pair>(150).fill({ x: 2048, y: 2048 })))).toEqual([]);
  });

  it('takes no long one that begins where the stick mostly is, nor one of more than 0.7 s', () => {
    const atRest = new StickStory().hold(20, { x: 2048, y: 2048 }).move(1, (s) => ({ x: 2048 + 1250 * s, y: 2048 }));
    const far = Array<Pair>(200).fill({ x: 3298, y: 2048 });
    expect(spans(changed(changed(readings(atRest), 3000, far), 9000, far))).toEqual([]);
    expect(spans(changed(changed(readings(), 100, away(HALF, 710)), 1000, away(HALF, 710)))).toEqual([]);
  });

  it('knows nothing of what lies about a gap, or of few readings', () => {
    const leapt = changed(readings(), 900, [{ x: 2048, y: 2048 }]);
    const late = { ...leapt, t: leapt.t.map((t, i) => (i >= 901 ? t + 2000 : t)) };
    expect(spans(late)).toEqual([]);
    const before = { ...leapt, t: leapt.t.map((t, i) => (i >= 900 ? t + 2000 : t)) };
    expect(spans(before)).toEqual([]);
    const few = changed(readings(new StickStory().hold(0.049, right)), 20, [{ x: 2048, y: 2048 }]);
    expect(findSignalLosses(few)).toEqual([]);
    const enough = changed(readings(new StickStory().hold(0.05, right)), 20, [{ x: 2048, y: 2048 }]);
    expect(enough.t).toHaveLength(50);
    expect(findSignalLosses(enough)).toHaveLength(1);
  });

  it('takes noise for noise: a leap is twelve σ and more', () => {
    // Steps of 20 counts from reading to reading: twelve of them are 240 counts.
    const restless = { ...readings(), x: readings().x.map((x, i) => x + (i % 2 === 0 ? 10 : -10)) };
    const at = (counts: number) => spans(changed(restless, 901, [{ x: right.x - counts, y: 2048 }]));
    expect(at(220)).toEqual([]);
    expect(at(260)).toEqual([[901, 902]]);
  });

  it('takes no push, release or swing of a spring for a loss', () => {
    const tilt = fc.record({
      angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
      push: fc.integer({ min: 40, max: 400 }),
      hold: fc.integer({ min: 60, max: 400 }),
      omega: fc.integer({ min: 20, max: 100 }),
      // Of ω: swings past the rest by a fifth at most.
      damping: fc.double({ min: 0.6, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(tilt, { minLength: 2, maxLength: 8 }),
        fc.constantFrom(1000, 4000, 8000),
        (tilts, stepUs) => {
          const round = (s: number): Pair => ({
            x: Math.round(2048 + HALF * Math.cos(Math.PI * s)),
            y: Math.round(2048 + HALF * Math.sin(Math.PI * s)),
          });
          const story = new StickStory(stepUs).move(4, round).hold(1, { x: 2048, y: 2048 });
          for (const { angle, push, hold, omega, damping } of tilts) {
            const at = (share: number): Pair => ({
              x: Math.round(2048 + HALF * share * Math.cos(angle)),
              y: Math.round(2048 + HALF * share * Math.sin(angle)),
            });
            story.move(push / 1000, (s) => at((s * 1000) / push)).hold(hold / 1000, at(1));
            story.move(0.4, (s) => at(Math.exp(-damping * omega * s) * Math.cos(omega * s))).hold(0.2, at(0));
          }
          expect(spans(readings(story))).toEqual([]);
        },
      ),
      { seed: 21, numRuns: 120 },
    );
  });

  it('does not depend on when the log began, on which way counts grow, or on which axis is which', () => {
    const leap = fc.record({
      at: fc.integer({ min: 10, max: 5900 }),
      length: fc.integer({ min: 1, max: 300 }),
      x: fc.integer({ min: 0, max: 4095 }),
      y: fc.integer({ min: 0, max: 4095 }),
    });
    fc.assert(
      fc.property(fc.array(leap, { maxLength: 8 }), fc.integer({ min: 1, max: 1_000_000_000 }), (leaps, shift) => {
        const track = leaps.reduce(
          (all, { at, length, x, y }) => changed(all, at, Array<Pair>(Math.min(length, 6000 - at)).fill({ x, y })),
          readings(),
        );
        const found = findSignalLosses(track);
        const later = findSignalLosses({ ...track, t: track.t.map((t) => t + shift) });
        expect(later).toEqual(
          found.map((loss) => ({ ...loss, startUs: loss.startUs + shift, endUs: loss.endUs + shift })),
        );
        const bare = (other: StickTrack): unknown[] =>
          findSignalLosses(other).map(({ from, to, size }) => [from, to, expect.closeTo(size, 9) as number]);
        const expected = found.map(({ from, to, size }) => [from, to, size]);
        expect(expected).toEqual(bare({ ...track, x: track.x.map((x) => 4095 - x) }));
        expect(expected).toEqual(bare({ ...track, x: track.y, y: track.x }));
      }),
      { seed: 22, numRuns: 60 },
    );
  });
});
