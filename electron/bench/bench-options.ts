/** What a shell gives the bench: where things are kept and what brings the pads. */
import type { LogFiles } from '../store/log-files.ts';
import type { Clock } from './time/clock.ts';
import type { LoopDelay } from './time/loop-delay.ts';
import type { PadLock } from './pads/pad-lock-port.ts';
import type { PadWatcher, PlugDemo } from './pads/pad-source.ts';
import type { SettingsPort } from './calls/settings-port.ts';
import type { Reply } from '../../shared/contract.ts';

export interface BenchOptions {
  readonly shell: Reply<'bench.hello'>['shell'];
  readonly version: string;
  /** One plain line each, for the foot of the screen. */
  readonly notices: readonly string[];
  /** The data folder: surveys are kept in it. */
  readonly folder: string;
  readonly clock: Clock;
  readonly loopDelay: LoopDelay;
  /** Null where real pads cannot be read; there are simulated ones all the same. */
  readonly watcher: PadWatcher | null;
  readonly plugDemo: PlugDemo;
  /** Whether the first pad there is is taken in hand without being asked for; a command names its own. */
  readonly takesPads: boolean;
  readonly lock: PadLock;
  readonly settings: SettingsPort;
  /** Where logs are written to; the system's own files unless a test makes them fail. */
  readonly files?: LogFiles;
  /** The file of the worker thread. */
  readonly measureWorker: URL;
}
