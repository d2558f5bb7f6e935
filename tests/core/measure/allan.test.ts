import { describe, expect, it } from 'vitest';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

function allanOf(act: (bench: SimulatedBench) => void, build = soundBut(() => ({}))) {
  const bench = new SimulatedBench(build, 8);
  act(bench);
  return measureTrack(bench.track(), null).sticks.left?.allan ?? null;
}

const quiet = soundBut((left) => ({ x: { ...left.x, noise: 0.3 }, y: { ...left.y, noise: 0.3 } }));
const { left } = quiet.sticks;
/** Only some of the readings of a still stick differ from the one before. */
const onChange = { ...quiet, sticks: { left, right: left }, onChange: true };

const lieStill = (bench: SimulatedBench): void => {
  bench.wait(5);
};

describe('measureAllan', () => {
  it('sees white noise fall with the root of the time', () => {
    const allan = allanOf(lieStill)!;
    expect(allan.tauUs[0]).toBeGreaterThan(980);
    expect(allan.tauUs[0]).toBeLessThan(1020);
    // 1.2 counts of noise and the rounding to whole counts.
    expect(allan.x![0]).toBeCloseTo(Math.sqrt(1.2 ** 2 + 1 / 12), 1);
    expect(allan.x![4]! * 4).toBeCloseTo(allan.x![0]!, 0);
    expect(allan.tauUs).toHaveLength(allan.y!.length);
  });

  it('finds a long dwell in a log with captures too', () => {
    const allan = allanOf((bench) => {
      bench.capture('rest', () => {
        bench.releases(2);
        bench.releases(1, 3);
      });
    });
    expect(allan!.x![0]).toBeCloseTo(Math.sqrt(1.2 ** 2 + 1 / 12), 1);
  });

  it('says nothing of an axis whose count never changed', () => {
    const allan = allanOf(
      lieStill,
      soundBut((left) => ({ y: { ...left.y, noise: 0 } })),
    );
    expect(allan!.y).toBeNull();
    expect(allan!.x).not.toBeNull();
  });

  it('is null for short dwells, uneven reports, and where a gap lies in between', () => {
    expect(
      allanOf((bench) => {
        bench.wait(0.9);
      }),
    ).toBeNull();
    expect(allanOf(lieStill, onChange)).toBeNull();
    expect(
      allanOf((bench) => {
        for (let part = 0; part < 6; part += 1) {
          bench.wait(0.7);
          bench.lose(0.1);
        }
      }),
    ).toBeNull();
  });
});
