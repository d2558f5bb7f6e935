/** A bench over a virtual clock, simulated pads and a folder of the test's own. */
import { onTestFinished } from 'vitest';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { done, type Result } from '../../../core/result.ts';
import { createBench } from '../../../electron/bench/bench.ts';
import type { BenchOptions } from '../../../electron/bench/bench-options.ts';
import type { Bench } from '../../../electron/bench/calls/bench-port.ts';
import type { SurveyState } from '../../../electron/bench/surveys/captures/capture-run.ts';
import { noLoopDelay } from '../../../electron/bench/time/loop-delay.ts';
import type { Settings, SettingsPort } from '../../../electron/bench/calls/settings-port.ts';
import { VirtualClock } from '../../../electron/bench/time/virtual-clock.ts';
import { createDemoPlug } from '../../../electron/transport/plug-demo.ts';
import type { Request } from '../../../shared/contract.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

export interface TestBench {
  readonly bench: Bench;
  readonly clock: VirtualClock;
  readonly folder: string;
  readonly states: SurveyState[];
  /** Lets virtual time pass until the condition holds; fails where nothing is left to wait for. */
  until(holds: () => boolean): Promise<void>;
  /** Lets so much virtual time pass. */
  pass(millis: number): Promise<void>;
}

type Wish = Partial<BenchOptions> & { readonly clock?: VirtualClock };

/** Closed when the test has finished. */
export async function makeBench(more: Wish = {}): Promise<TestBench> {
  const made = newBench(more.folder ?? (await temporaryFolder()), more);
  onTestFinished(() => made.bench.close());
  return made;
}

/** For use outside of a test; to be closed by hand. */
export function newBench(folder: string, more: Wish = {}): TestBench {
  const clock = more.clock ?? new VirtualClock(new Date('2024-05-01T10:00:00Z'));
  const bench = createBench({
    shell: 'local',
    version: '0.0.0-test',
    notices: ['One line.'],
    folder,
    clock,
    loopDelay: noLoopDelay,
    watcher: null,
    plugDemo: createDemoPlug(clock, 1),
    takesPads: false,
    lock: { take: () => Promise.resolve(done(() => Promise.resolve())) },
    settings: memorySettings(),
    measureWorker: new URL('../../../electron/bench/measure/measure-worker.ts', import.meta.url),
    ...more,
  });
  const states: SurveyState[] = [];
  bench.listen('survey.state', (state) => states.push(state));
  const until = async (holds: () => boolean): Promise<void> => {
    if (!(await clock.run(holds))) throw new Error('Nothing is left to wait for.');
  };
  return {
    bench,
    clock,
    folder,
    states,
    until,
    pass(millis) {
      const end = clock.micros() + 1000 * millis;
      return until(() => clock.micros() >= end);
    },
  };
}

export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.says}`);
  return result.value;
}

/** Opens the first pad in the list. */
export async function openFirst({ bench }: TestBench): Promise<string> {
  const [first] = valueOf(await bench.handle('pads.list', {}));
  if (first === undefined) throw new Error('There is no pad.');
  valueOf(await bench.handle('pads.open', { pad: first.pad }));
  return first.pad;
}

/** The hand of every stick does what the survey asks for. */
export async function follow({ bench }: TestBench, pad: string): Promise<void> {
  for (const stick of ['left', 'right'] as const)
    valueOf(await bench.handle('demo.hand', { pad, stick, does: 'follow' }));
}

export function surveyOf(pad: string, more: Partial<Request<'survey.start'>> = {}): Request<'survey.start'> {
  return {
    pad,
    stage: 'received',
    sticks: ['left'],
    steps: ['rest', 'rim'],
    disturbances: [],
    releases: 3,
    turns: 1,
    sweeps: 1,
    flicks: 1,
    confirmButton: null,
    ...more,
  };
}

function memorySettings(): SettingsPort {
  let settings: Settings = {
    theme: 'system',
    sound: true,
    speech: false,
    confirmButton: null,
    limits: {},
    mappings: [],
    chain: chainOf({ shape: 'radial', inner: 0.1, outer: 1 }),
    driver: null,
    consumers: [],
  };
  return {
    read: () => settings,
    write(part) {
      settings = { ...settings, ...part } as Settings;
      return done(settings);
    },
  };
}
