/**
 * A value shown some frames after it changed: where a change is drawn in many figures, each takes a frame of its own and no
 * frame has to carry them all. The newest value is shown; a value that goes on changing is shown again and again, not put off.
 */
import { untrack } from 'svelte';
import type { FrameClock } from './each-frame.ts';

/** Call it where effects may be made. */
export function framesLater<T>(read: () => T, frames: number, clock: FrameClock = window): { readonly now: T } {
  let shown = $state.raw(untrack(read));
  let handle: number | null = null;

  function wait(left: number): void {
    handle = clock.requestAnimationFrame(() => {
      if (left > 1) {
        wait(left - 1);
        return;
      }
      handle = null;
      shown = read();
    });
  }

  $effect(() => {
    read();
    if (handle === null) wait(frames);
  });
  $effect(() => () => {
    if (handle !== null) clock.cancelAnimationFrame(handle);
  });
  return {
    get now() {
      return shown;
    },
  };
}
