import { describe, expect, it } from 'vitest';
import { SweepWatch } from '../../../../core/capture/guide/sweep-watch.ts';

const MS = 1000;

/** A sweep toward +x from a gate at a tilt of 1; `to` tells a sample, `wait` time without one. */
function sweep(end: number | null = 1) {
  const watch = new SweepWatch({ direction: 0, start: 1, end });
  let t = 0;
  const hand = {
    watch,
    to(ms: number, x: number, y = 0, down = false) {
      t += ms * MS;
      watch.sample(t, { x, y }, down);
      return hand;
    },
    wait(ms: number) {
      t += ms * MS;
      watch.advance(t);
      return hand;
    },
  };
  return hand.to(0, -1);
}

describe('SweepWatch', () => {
  it('is under way beyond 80 % of the way from the rest to its first gate', () => {
    expect(sweep().to(10, -0.8).watch.isUnderWay).toBe(false);
    expect(sweep().to(10, -0.79).watch.isUnderWay).toBe(true);
  });

  it('is over where the stick stands at the far gate for 150 ms', () => {
    const hand = sweep().to(10, -0.79).to(1300, 0.9).wait(149);
    expect(hand.watch.isOver).toBe(false);
    hand.wait(1);
    expect(hand.watch).toMatchObject({ isOver: true, fault: null, furthest: 0.9 });
  });

  it('is over where it comes back from the far gate by more than a tenth of the way to arriving', () => {
    // It arrives at 0.8: a tenth of that is 0.08.
    const hand = sweep().to(10, -0.79).to(1300, 1).to(10, 0.925);
    expect(hand.watch.isOver).toBe(false);
    hand.to(10, 0.915);
    expect(hand.watch).toMatchObject({ isOver: true, fault: null });
  });

  it('was too fast in less than 1.2 s between 80 % of either side', () => {
    const over = (ms: number) => sweep().to(10, -0.79).to(ms, 0.8).wait(150).watch;
    expect(over(1199)).toMatchObject({ isOver: true, fault: 'too-fast' });
    expect(over(1200)).toMatchObject({ isOver: true, fault: null });
  });

  it('arrives at 80 % of the far gate, or at 65 % of the near one while the far one is not known', () => {
    const arrives = (end: number | null, x: number) => sweep(end).to(10, -0.79).to(1300, x).wait(200).watch.isOver;
    expect([arrives(0.5, 0.39), arrives(0.5, 0.41)]).toEqual([false, true]);
    expect([arrives(null, 0.64), arrives(null, 0.66)]).toEqual([false, true]);
  });

  it('stopped where it stands on its way for 700 ms', () => {
    const hand = sweep().to(10, -0.79).to(500, 0.1).wait(699);
    expect(hand.watch.isOver).toBe(false);
    expect(hand.wait(1).watch).toMatchObject({ isOver: true, fault: 'stopped' });
  });

  it('turned back where it goes back on its way by more than a quarter of the near side', () => {
    const hand = sweep().to(10, -0.79).to(500, 0.1).to(100, -0.14);
    expect(hand.watch.isOver).toBe(false);
    expect(hand.to(100, -0.16).watch).toMatchObject({ isOver: true, fault: 'turned-back' });
  });

  it('left its line more than 45 % of the near side off it, on either side', () => {
    for (const side of [1, -1]) {
      const hand = sweep()
        .to(10, -0.79)
        .to(500, 0, 0.44 * side);
      expect(hand.watch.isOver).toBe(false);
      expect(hand.to(10, 0, 0.46 * side).watch).toMatchObject({ isOver: true, fault: 'off-line' });
    }
  });

  it('keeps the first fault, a button or a gap on the way alone, and tells it at the end', () => {
    const end = (hand: ReturnType<typeof sweep>) => hand.to(1300, 0.9).wait(150).watch.fault;
    expect(end(sweep().to(10, -0.9, 0, true).to(10, -0.79))).toBeNull();
    const pressed = sweep().to(10, -0.79, 0, true);
    expect(pressed.watch).toMatchObject({ isOver: false, fault: 'button' });
    pressed.watch.gap();
    expect(end(pressed)).toBe('button');
    const early = sweep();
    early.watch.gap();
    expect(end(early.to(10, -0.79))).toBeNull();
    const lost = sweep().to(10, -0.79);
    lost.watch.gap();
    expect(end(lost)).toBe('gap');
    lost.to(10, 5);
    expect(lost.watch.furthest).toBe(0.9);
  });

  it('says its place between −1 at the one gate and 1 at the other', () => {
    expect(sweep(0.5).to(10, -0.25).watch.along).toBe(-0.25);
    expect(sweep(0.5).to(10, 0.25).watch.along).toBe(0.5);
    expect(sweep(0.5).to(10, 0.75).watch.along).toBe(1);
    expect(sweep(null).to(10, 0.25).watch.along).toBe(0.25);
    expect(sweep(null).to(10, 2).watch.along).toBe(1);
    expect(sweep().to(10, -3).watch.along).toBe(-1);
  });

  it('takes its line from the direction it is given', () => {
    const watch = new SweepWatch({ direction: 90, start: 1, end: 1 });
    watch.sample(0, { x: 0.4, y: -0.5 }, false);
    expect(watch.isOver).toBe(false);
    expect(watch.along).toBeCloseTo(-0.5, 12);
    watch.sample(10, { x: 0.5, y: 0 }, false);
    expect(watch.fault).toBe('off-line');
  });
});
