/** What memory sessions need of the rest of the bench. */
import type { JournalStore } from '../../store/journal.ts';
import type { Vault } from '../../store/image-vault.ts';
import type { Clock } from '../time/clock.ts';
import type { OpenJournals } from './open-journals.ts';
import type { KnownMaps } from './known-maps.ts';
import type { MemoryState } from './memory-run.ts';
import type { PadLock } from '../pads/pad-lock-port.ts';
import type { PadSessions } from '../pads/pad-sessions.ts';
import type { ShownPlans } from './shown-plans.ts';
import type { KnownProtocols } from './known-protocols.ts';
import type { WriteGate } from './write-gate.ts';

export interface MemoryNeeds {
  readonly version: string;
  readonly clock: Clock;
  readonly padSessions: Pick<PadSessions, 'session'>;
  readonly lock: PadLock;
  readonly vault: Pick<Vault, 'keep' | 'read'>;
  readonly maps: Pick<KnownMaps, 'read'>;
  readonly protocols: Pick<KnownProtocols, 'find'>;
  readonly plans: Pick<ShownPlans, 'find'>;
  readonly store: Pick<JournalStore, 'begin' | 'append'>;
  readonly journals: OpenJournals;
  readonly gate: WriteGate;
  /** A capture of the pad is under way. */
  readonly isCaptured: (pad: string) => boolean;
  /** True while looking for pads would disturb. */
  readonly quiet: (wanted: boolean) => void;
  readonly tell: (state: MemoryState) => void;
  /** An image was kept. */
  readonly kept: () => void;
  /** The list of open journals has changed. */
  readonly noted: () => void;
}
