import { describe, expect, it } from 'vitest';
import { VirtualClock } from '../../../../electron/bench/time/virtual-clock.ts';

describe('virtual clock', () => {
  it('calls timers in order of their time, equal ones in the order in which they were set', async () => {
    const clock = new VirtualClock(new Date(0));
    const called: string[] = [];
    clock.after(20, () => called.push('c'));
    clock.after(10, () => called.push('a'));
    clock.after(10, () => called.push('b'));
    expect(await clock.run(() => called.length === 3)).toBe(true);
    expect(called).toEqual(['a', 'b', 'c']);
    expect(clock.micros()).toBe(20_000);
    expect(clock.now().getTime()).toBe(20);
  });

  it('ends where nothing is left to wait for', async () => {
    const clock = new VirtualClock(new Date(0));
    clock.after(5, () => undefined)();
    expect(await clock.run(() => false)).toBe(false);
    expect(clock.micros()).toBe(0);
  });

  it('lets files and streams have their turn while timers go on without end', async () => {
    const clock = new VirtualClock(new Date(0));
    const again = (): void => void clock.after(1, again);
    again();
    let turned = false;
    setImmediate(() => (turned = true));
    expect(await clock.run(() => turned)).toBe(true);
  });
});
