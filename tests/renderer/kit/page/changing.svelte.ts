/** State that a test changes, and a root for the effects it makes. */
import { flushSync } from 'svelte';

export function changing<T>(first: T): { now: T } {
  let now = $state.raw(first);
  return {
    get now() {
      return now;
    },
    set now(value) {
      now = value;
    },
  };
}

/** Runs with effects allowed and ends them. */
export function inRoot(run: () => void): void {
  const end = $effect.root(() => {
    run();
  });
  flushSync();
  end();
}
