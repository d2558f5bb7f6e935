import { describe, expect, it } from 'vitest';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { SimulatedBench, soundBut } from '../../support/simulated-bench.ts';

const quiet = { friction: { x: 0.0015, y: 0.0015 } };
const bends = { rumble: { x: 0.02, y: 0 }, click: { x: 0, y: -0.03 } };
const build = soundBut((left) => ({
  back: { ...left.back, ...quiet },
  turnDegrees: 0,
  crossTalk: { xFromY: 0, yFromX: 0 },
  bends,
}));

function rested(releases = 8): SimulatedBench {
  const bench = new SimulatedBench(build, 4);
  bench.capture('rest', () => {
    bench.releases(releases);
  });
  return bench;
}

const shiftsOf = (bench: SimulatedBench) => measureTrack(bench.track(), null).sticks.left?.disturbance ?? null;

describe('measureDisturbance', () => {
  it('measures by how much rumble moves the rest, within its uncertainty', () => {
    const bench = rested();
    bench.pad.hand.disturb('rumble', true);
    bench.capture(
      'disturbance',
      () => {
        bench.releases(6);
      },
      { of: 'rumble' },
    );
    const [rumble, ...others] = shiftsOf(bench)!;
    expect(others).toEqual([]);
    expect(rumble!.of).toBe('rumble');
    expect(rumble!.u95!.x).toBeLessThan(6);
    expect(Math.abs(rumble!.shift.x - 25)).toBeLessThan(rumble!.u95!.x);
    expect(Math.abs(rumble!.shift.y)).toBeLessThan(2 * rumble!.u95!.y);
  });

  it('keeps a word that it does not know, and finds no shift where nothing moves', () => {
    const bench = rested();
    bench.capture(
      'disturbance',
      () => {
        bench.releases(6);
      },
      { of: 'a lamp beside it' },
    );
    const [lamp] = shiftsOf(bench)!;
    expect(lamp!.of).toBe('a lamp beside it');
    expect(Math.abs(lamp!.shift.x)).toBeLessThan(2 * lamp!.u95!.x);
  });

  it('takes what lies still with the click down for a click, marked or not, y up', () => {
    for (const isMarked of [true, false]) {
      const bench = rested();
      const press = (): void => {
        bench.wait(0.2);
        for (const edge of ['begin', 'end']) {
          if (isMarked) bench.mark('dwell', { edge });
          if (edge === 'begin') bench.wait(0.6);
        }
        bench.wait(0.5);
      };
      bench.capture(
        'disturbance',
        () => {
          for (let i = 0; i < 3; i += 1) {
            bench.pad.hand.press(11, 900);
            press();
          }
        },
        { of: 'click' },
      );
      const [click] = shiftsOf(bench)!;
      expect(click).toMatchObject({ of: 'click' });
      expect(Math.abs(click!.shift.y + 0.03 * 1236)).toBeLessThan(Math.max(4, click!.u95!.y));
    }
  });

  it('finds a click in a log without marks, and says nothing of a button that moves nothing', () => {
    const bench = new SimulatedBench(build, 4);
    bench.wait(1);
    for (const button of [11, 1]) {
      bench.pad.hand.press(button, 800);
      bench.wait(1.6);
    }
    const [first, ...others] = shiftsOf(bench)!;
    expect(first).toMatchObject({ of: 'click' });
    expect(first!.shift.y).toBeLessThan(-30);
    expect(others).toEqual([]);
  });

  it('leaves the uncertainty open with one undisturbed dwell, and is null with none or with only a gap', () => {
    const disturbed = (bench: SimulatedBench, act: () => void) => {
      bench.capture('disturbance', act, { of: 'charger' });
      return shiftsOf(bench);
    };
    const one = rested(1);
    const [charger] = disturbed(one, () => {
      one.releases(3);
    })!;
    expect(charger!.u95).toBeNull();
    const none = rested(0);
    expect(
      disturbed(none, () => {
        none.releases(3);
      }),
    ).toBeNull();
    const gap = rested(3);
    expect(
      disturbed(gap, () => {
        gap.lose(2);
      }),
    ).toBeNull();
  });
});
