/** The bench of one command: with the pads that the command gives it, and no others. */
import { failed } from '../../../core/result.ts';
import { createBench } from '../../bench/bench.ts';
import type { BenchOptions } from '../../bench/bench-options.ts';
import type { Bench } from '../../bench/calls/bench-port.ts';
import { systemClock } from '../../bench/time/clock.ts';
import { noLoopDelay } from '../../bench/time/loop-delay.ts';
import type { PadSource } from '../../bench/pads/pad-source.ts';
import { createPadLock } from '../../store/pad-lock.ts';
import { findPlaces } from '../../store/places.ts';
import { KeptSettings } from '../../store/settings.ts';
import { programVersion } from '../program-version.ts';

/** For work that needs no pad. */
export function atBareBench<T>(work: (bench: Bench) => Promise<T>): Promise<T> {
  return atBench({ clock: systemClock, lock: createPadLock() }, [], work);
}

/** Does the work and closes the bench, whatever comes of it. */
export async function atBench<T>(
  { clock, lock }: Pick<BenchOptions, 'clock' | 'lock'>,
  pads: readonly PadSource[],
  work: (bench: Bench) => Promise<T>,
): Promise<T> {
  const { data, settings } = findPlaces();
  const bench = createBench({
    shell: 'commandLine',
    version: programVersion,
    notices: [],
    folder: data,
    clock,
    loopDelay: noLoopDelay,
    watcher: {
      start: (hear) => hear(pads),
      pause: () => undefined,
      resume: () => undefined,
      close: () => Promise.resolve(),
    },
    plugDemo: () => failed('demo-unknown', 'A command names its pad itself.'),
    takesPads: false,
    lock,
    settings: new KeptSettings(settings, () => new Date()),
    // This part of the program lies in a folder below its entries.
    measureWorker: new URL('../measure-worker.js', import.meta.url),
  });
  try {
    return await work(bench);
  } finally {
    await bench.close();
  }
}
