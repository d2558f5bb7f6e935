/** What the memory desk needs of the rest of the bench. */
import type { JournalStore } from '../store/journal.ts';
import type { Vault } from '../store/vault.ts';
import type { Clock } from './clock.ts';
import type { JournalDesk } from './journal-desk.ts';
import type { MapShelf } from './map-shelf.ts';
import type { MemoryState } from './memory-run.ts';
import type { PadLock } from './pad-lock-port.ts';
import type { PadRack } from './pad-rack.ts';
import type { PlanBoard } from './plan-board.ts';
import type { ProtocolShelf } from './protocol-shelf.ts';
import type { WriteGate } from './write-gate.ts';

export interface MemoryPorts {
  readonly version: string;
  readonly clock: Clock;
  readonly rack: Pick<PadRack, 'session'>;
  readonly lock: PadLock;
  readonly vault: Pick<Vault, 'keep' | 'read'>;
  readonly maps: Pick<MapShelf, 'read'>;
  readonly protocols: Pick<ProtocolShelf, 'find'>;
  readonly plans: Pick<PlanBoard, 'find'>;
  readonly store: Pick<JournalStore, 'begin' | 'append'>;
  readonly journals: JournalDesk;
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
