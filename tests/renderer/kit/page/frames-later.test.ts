import { describe, expect, it } from 'vitest';
import { flushSync } from 'svelte';
import { framesLater } from '../../../../renderer/kit/page/frames-later.svelte.ts';
import { changing, inRoot } from './changing.svelte.ts';

/** A window whose frames come when the test says. */
function handClock() {
  const waiting = new Map<number, (millis: number) => void>();
  let last = 0;
  return {
    waiting,
    requestAnimationFrame(draw: (millis: number) => void): number {
      waiting.set((last += 1), draw);
      return last;
    },
    cancelAnimationFrame: (handle: number) => void waiting.delete(handle),
    frame(): void {
      const due = [...waiting.values()];
      waiting.clear();
      for (const draw of due) draw(0);
      flushSync();
    },
  };
}

describe('framesLater', () => {
  it('shows a change after so many frames, and the newest of several', () => {
    const [clock, value] = [handClock(), changing(1)];
    inRoot(() => {
      const later = framesLater(() => value.now, 2, clock);
      clock.frame();
      clock.frame();
      expect(later.now).toBe(1);
      value.now = 2;
      flushSync();
      clock.frame();
      expect(later.now).toBe(1);
      value.now = 3;
      flushSync();
      clock.frame();
      expect(later.now).toBe(3);
    });
  });

  it('does not put a value off that changes in every frame', () => {
    const [clock, value] = [handClock(), changing(0)];
    inRoot(() => {
      const later = framesLater(() => value.now, 3, clock);
      for (let frame = 1; frame <= 9; frame += 1) {
        value.now = frame;
        flushSync();
        clock.frame();
      }
      expect(later.now).toBeGreaterThanOrEqual(6);
    });
  });

  it('asks for no frame once it has ended', () => {
    const clock = handClock();
    inRoot(() => framesLater(() => 1, 1, clock));
    expect(clock.waiting.size).toBe(0);
  });
});
