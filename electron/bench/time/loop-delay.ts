/** How long the event loop kept a due timer waiting: reports that arrive meanwhile are stamped late by as much. */
import { monitorEventLoopDelay } from 'node:perf_hooks';

const RESOLUTION_MILLIS = 1;

export interface LoopDelay {
  /** Longest delay in milliseconds since the last call. */
  take(): number;
  stop(): void;
}

/** Delay of this process' own event loop. */
export function watchLoopDelay(): LoopDelay {
  const histogram = monitorEventLoopDelay({ resolution: RESOLUTION_MILLIS });
  histogram.enable();
  return {
    take() {
      // The histogram holds the whole interval between two timer ticks, of which one resolution is the wait asked for.
      const longest = histogram.max / 1e6 - RESOLUTION_MILLIS;
      histogram.reset();
      return Math.max(0, longest);
    },
    stop: () => void histogram.disable(),
  };
}

/** For a bench on its own clock, where delay means nothing. */
export const noLoopDelay: LoopDelay = { take: () => 0, stop: () => undefined };
