import { describe, expect, it } from 'vitest';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

/** So many releases, three seconds each, of a part whose middle comes back from 60 counts off. */
function warmUpOf(dwells: number, drift: { counts: number; seconds: number } | null) {
  const bench = new SimulatedBench(
    soundBut((left) => ({
      back: { ...left.back, friction: { x: 0.001, y: 0.001 } },
      ...(drift === null ? {} : { x: { ...left.x, drift } }),
    })),
    6,
  );
  bench.mark('warmUp', { edge: 'begin' });
  for (let dwell = 0; dwell < dwells; dwell += 1) {
    bench.releases(1, 0.5);
    bench.mark('dwell', { edge: 'begin' });
    bench.wait(0.5);
    bench.mark('dwell', { edge: 'end' });
    bench.wait(1.2);
  }
  bench.mark('warmUp', { edge: 'end' });
  return measureTrack(bench.track(), null).sticks.left?.warmUp ?? null;
}

describe('measureWarmUp', () => {
  it('says wait while the rest drifts, and at what rate', () => {
    const warmUp = warmUpOf(10, { counts: 60, seconds: 30 })!;
    expect(warmUp).toMatchObject({ dwells: 10, steady: false });
    // From 60 counts after 0 s to 60·exp(−28/30) after 28 s: some −1.3 counts a second on the whole.
    expect(Math.abs(warmUp.drift.x)).toBeGreaterThan(0.9);
    expect(Math.abs(warmUp.drift.x)).toBeLessThan(1.7);
    expect(Math.abs(warmUp.last!.x)).toBeGreaterThan(warmUp.last!.u95.x);
    expect(warmUp.seconds).toBeGreaterThan(20);
  });

  it('says steady once the last third no longer drifts', () => {
    const warmUp = warmUpOf(24, { counts: 60, seconds: 4 })!;
    expect(warmUp.steady).toBe(true);
    expect(Math.abs(warmUp.drift.x)).toBeGreaterThan(warmUp.drift.u95.x);
  });

  it('cannot tell with few dwells, and is null with two or without a warm-up', () => {
    expect(warmUpOf(4, null)).toMatchObject({ dwells: 4, last: null, steady: null });
    expect(warmUpOf(2, null)).toBeNull();
    const bench = new SimulatedBench(soundBut(() => ({})));
    bench.capture('rest', () => {
      bench.releases(3);
    });
    expect(measureTrack(bench.track(), null).sticks.left?.warmUp).toBeNull();
  });
});
