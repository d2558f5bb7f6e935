import { describe, expect, it } from 'vitest';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import type { PadBuild, ReturnBuild } from '../../../core/simulate/build.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

function recorded(build: PadBuild, act: (bench: SimulatedBench) => void, rest = true): SimulatedBench {
  const bench = new SimulatedBench(build, 2);
  if (rest)
    bench.capture('rest', () => {
      bench.releases(6);
    });
  bench.capture('flick', () => {
    act(bench);
  });
  return bench;
}

function flickOf(bench: SimulatedBench) {
  const { x, y } = { x: { min: 836, centre: 2061, max: 3286 }, y: { min: 827, centre: 2038, max: 3249 } };
  return measureTrack(bench.track(), { left: { x, y } }).sticks.left?.flick ?? null;
}

const back = (change: Partial<ReturnBuild>) =>
  soundBut((left) => ({ back: { ...left.back, ...change }, turnDegrees: 0, crossTalk: { xFromY: 0, yFromX: 0 } }));

const four = (bench: SimulatedBench): void => {
  bench.flicks([0, 90, 180, 270]);
};

/** First overshoot of a damped oscillator let go at rest from 1: exp(−πζ/√(1 − ζ²)). */
const overshootOf = (ratio: number): number => Math.exp((-Math.PI * ratio) / Math.sqrt(1 - ratio ** 2));

describe('measureFlick', () => {
  it.each([0.5, 0.6, 0.7])('measures the overshoot of a stick with damping ratio %d', (dampingRatio) => {
    const flick = flickOf(recorded(back({ dampingRatio, friction: { x: 0.0005, y: 0.0005 } }), four))!;
    expect(flick).toMatchObject({ count: 4, unread: 0 });
    expect(flick.overshoot.mean).toBeGreaterThan(overshootOf(dampingRatio) - 0.012);
    expect(flick.overshoot.mean).toBeLessThan(overshootOf(dampingRatio) + 0.012);
    expect(flick.overshootCounts.mean / 1220).toBeCloseTo(flick.overshoot.mean, 1);
    expect(flick.at).toHaveLength(4);
  });

  it('finds no overshoot of a well damped stick beyond its noise, and a settling time that fits its spring', () => {
    const flick = flickOf(recorded(back({}), four))!;
    expect(flick.overshoot.largest).toBeLessThan(0.012);
    // Critically damped at 16 Hz: within 0.6 % of full tilt after some 7 time constants, 70 ms.
    expect(flick.settlingUs.p50).toBeGreaterThan(40_000);
    expect(flick.settlingUs.p50).toBeLessThan(110_000);
  });

  it('takes longer to settle with a weaker spring', () => {
    const slow = flickOf(recorded(back({ naturalHz: 8 }), four))!;
    expect(slow.settlingUs.p50).toBeGreaterThan(1.6 * flickOf(recorded(back({}), four))!.settlingUs.p50);
  });

  it('finds the releases of a capture that marks none', () => {
    const bench = recorded(back({ dampingRatio: 0.6 }), (one) => {
      for (const angle of [0, 180]) {
        one.pad.hand.flick('left', angle);
        one.untilLetGo();
        one.wait(1);
      }
    });
    expect(flickOf(bench)).toMatchObject({ count: 2, unread: 0 });
  });

  it('counts as unread what lost reports hide, and leaves out what was taken back', () => {
    const bench = recorded(back({ dampingRatio: 0.6 }), (one) => {
      one.flicks([0, 90]);
      one.mark('repeat', { of: 'flick' });
      one.mark('toward', { angle: 90 });
      one.pad.hand.flick('left', 90);
      one.wait(0.3);
      one.lose(0.3);
      one.mark('release');
      one.wait(1);
    });
    expect(flickOf(bench)).toMatchObject({ count: 1, unread: 1 });
  });

  it('is null without a flick, a rest, or a release from full tilt', () => {
    expect(flickOf(recorded(back({}), () => undefined))).toBeNull();
    expect(flickOf(recorded(back({}), four, false))).toBeNull();
    const still = recorded(back({}), (bench) => {
      bench.mark('release');
      bench.wait(1);
    });
    expect(flickOf(still)).toBeNull();
  });

  it('says nothing of a pad that reports too rarely for it', () => {
    const rare = { ...back({ dampingRatio: 0.6 }), intervalMicros: 30_000, jitterMicros: 0 };
    expect(flickOf(recorded(rare, four))).toBeNull();
  });
});
