import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { measureTravel } from '../../../core/measure/travel.ts';
import type { PadBuild, SensorBuild } from '../../../core/simulate/build.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

const SWEEPS = [0, 180, 90, 270, 0, 180, 90, 270];

function travelOf(build: PadBuild, sweeps: readonly number[] = SWEEPS, seed = 5) {
  const bench = new SimulatedBench(build, seed);
  bench.capture('rest', () => {
    bench.releases(4);
  });
  bench.capture('travel', () => {
    bench.sweeps(sweeps);
  });
  return measureTrack(bench.track(), null).sticks.left?.travel ?? null;
}

const x = (left: { readonly x: SensorBuild }, change: Partial<SensorBuild>) => ({ x: { ...left.x, ...change } });

describe('measureTravel', () => {
  it('finds nothing wrong with a sound stick, and its extents at the gate', () => {
    const travel = travelOf(soundBut(() => ({ turnDegrees: 0, crossTalk: { xFromY: 0, yFromX: 0 } })))!;
    expect(travel.sweeps).toBe(8);
    for (const axis of [travel.x!, travel.y!])
      expect(axis).toMatchObject({ jumps: 0, backwards: 0, unsteady: [], step: 1 });
    // Some five visits a count are too few to tell that one never occurs.
    expect(travel.x).toMatchObject({ missing: null, longestRun: null, runs: [] });
    // 2,061 ± 1,250 · (1 − 0.02) counts, the gate's centre 0.4 % to the right.
    expect(Math.abs(travel.x!.max - 3290)).toBeLessThan(15);
    expect(Math.abs(travel.x!.min - 840)).toBeLessThan(15);
    expect(Math.abs(travel.turnAngle!)).toBeLessThan(Math.max(travel.turnU95!, 0.5));
  });

  it('tells by how much a part sits turned, within its uncertainty', () => {
    const travel = travelOf(soundBut(() => ({ turnDegrees: 12, crossTalk: { xFromY: 0, yFromX: 0 } })))!;
    // A part turned counter-clockwise reports a push to the right as one to the lower right.
    expect(Math.abs(Math.abs(travel.turnAngle!) - 12)).toBeLessThan(travel.turnU95!);
    expect(travel.turnU95).toBeLessThan(6);
  });

  it('finds a worn stretch of the track where it is', () => {
    const worn = [{ from: 0.42, to: 0.58, noise: 12, liftShare: 0.05, lift: 140 }];
    const travel = travelOf(soundBut((left) => x(left, { worn })))!;
    const [stretch] = [...travel.x!.unsteady!].sort((a, b) => b.times - a.times);
    expect(stretch!.times).toBeGreaterThan(4);
    expect(stretch!.from).toBeGreaterThan(2061 + 0.36 * 1250);
    expect(stretch!.to).toBeLessThan(2061 + 0.64 * 1250);
    expect(travel.x!.jumps).toBeGreaterThan(0);
    expect(travel.y).toMatchObject({ jumps: 0, unsteady: [] });
  });

  it('takes a comb for the step of the counts, not for missing counts', () => {
    const travel = travelOf(soundBut((left) => x(left, { adcBits: 9 })))!;
    expect(travel.x).toMatchObject({ step: 8, longestRun: 0 });
    expect(travel.y?.step).toBe(1);
  });

  it('says that swapped axes go the other way', () => {
    const travel = travelOf(soundBut(() => ({ swapped: true })))!;
    expect(Math.abs(Math.abs(travel.seenAngle.x! - 180) - 90)).toBeLessThan(8);
  });

  it('says nothing of an axis that is dead, or of turn and skew without prompts along both axes', () => {
    const dead = travelOf(soundBut((left) => x(left, { deadAt: 2000 })))!;
    expect(dead.x).toBeNull();
    expect(dead).toMatchObject({ turnAngle: null, skewAngle: null });
    expect(
      travelOf(
        soundBut(() => ({})),
        [0, 180],
      ),
    ).toMatchObject({ y: null, skewAngle: null });
  });

  it('says nothing where a capture holds only a gap, or the stick was left alone', () => {
    const bench = new SimulatedBench(soundBut(() => ({})));
    bench.capture('travel', () => {
      bench.mark('toward', { angle: 0 });
      bench.lose(2);
    });
    const lost = bench.track();
    expect(measureTravel(lost, 'left', gatherEvidence(lost, 'left'))).toBeNull();
    expect(measureTravel(lost, 'right', gatherEvidence(lost, 'right'))).toBeNull();
  });
});
