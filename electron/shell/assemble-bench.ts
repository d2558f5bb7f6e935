/** Puts the real parts of this machine behind the bench, the same for every shell with a window. */
import { createBench } from '../bench/bench.ts';
import type { BenchOptions } from '../bench/bench-options.ts';
import type { Bench } from '../bench/calls/bench-port.ts';
import { systemClock } from '../bench/time/clock.ts';
import { unusedLimits } from '../bench/measure/limits-in-force.ts';
import { watchLoopDelay } from '../bench/time/loop-delay.ts';
import { createPadLock } from '../store/pad-lock.ts';
import { findPlaces } from '../store/places.ts';
import type { KeptSettings } from '../store/settings.ts';
import { tighten } from '../store/tighten.ts';
import { hidSystem } from '../transport/hid-system.ts';
import { loadHid } from '../transport/node-hid.ts';
import { createDemoPlug } from '../transport/plug-demo.ts';
import { watchNodes } from '../transport/watch-nodes.ts';
import { PadWatch } from '../transport/watch-pads.ts';
import { programVersion } from './program-version.ts';

export interface Assembly {
  readonly shell: BenchOptions['shell'];
  readonly settings: KeptSettings;
  /** The worker's own file, beside the shell's. */
  readonly measureWorker: URL;
}

const DEMO_SEED = 1;

/** A machine without the HID library gets simulated pads and one line that says what is missing. */
export async function assembleBench({ shell, settings, measureWorker }: Assembly): Promise<Bench> {
  const hid = await loadHid();
  // The first look at the file finds out whether it can be understood.
  const kept = settings.read();
  const places = findPlaces();
  const open = await tighten(places);
  const system = hidSystem(process.platform);
  const watcher = hid.ok
    ? new PadWatch({
        hid: hid.value,
        clock: systemClock,
        system,
        nodes: watchNodes(process.platform),
        onProblem: ({ says }) => console.error(says),
      })
    : null;
  return createBench({
    shell,
    version: programVersion,
    notices: [
      ...[hid.ok ? null : hid.problem, settings.problem, open].flatMap((problem) => problem?.says ?? []),
      ...unusedLimits(kept.limits),
    ],
    folder: places.data,
    clock: systemClock,
    loopDelay: watchLoopDelay(),
    watcher,
    plugDemo: createDemoPlug(systemClock, DEMO_SEED),
    takesPads: true,
    lock: createPadLock(),
    settings,
    measureWorker,
  });
}
