/** The memory desk behind the contract, and what it tells. */
import path from 'node:path';
import type { Result } from '../../core/result.ts';
import type { Reply } from '../../shared/contract.ts';
import { JournalStore } from '../store/journal.ts';
import type { Vault } from '../store/vault.ts';
import { WriteSwitch } from '../store/write-switch.ts';
import type { BenchOptions } from './bench-options.ts';
import type { Handlers } from './call-handlers.ts';
import type { EventBoard } from './event-board.ts';
import { JournalDesk } from './journal-desk.ts';
import type { MapShelf } from './map-shelf.ts';
import { MemoryDesk } from './memory-desk.ts';
import { memoryHandlers } from './memory-handlers.ts';
import type { MemoryPorts } from './memory-ports.ts';
import type { PadRack } from './pad-rack.ts';
import type { PadRegistry } from './pad-registry.ts';
import type { PlanBoard } from './plan-board.ts';
import { ProtocolShelf } from './protocol-shelf.ts';
import { tellLatest } from './tell-latest.ts';
import { WriteGate } from './write-gate.ts';

export interface MemorySidePorts extends Pick<MemoryPorts, 'isCaptured' | 'quiet'> {
  readonly options: Pick<BenchOptions, 'folder' | 'version' | 'clock' | 'lock'>;
  readonly rack: PadRack;
  readonly registry: Pick<PadRegistry, 'padOf'>;
  readonly vault: Vault;
  readonly maps: MapShelf;
  readonly plans: PlanBoard;
  readonly events: EventBoard;
  readonly openSurvey: (survey: string) => Promise<Result<Reply<'surveys.open'>>>;
  readonly tellImages: () => Promise<unknown>;
  readonly tellMaps: () => Promise<unknown>;
  readonly startOf: (survey: string) => Promise<Result<{ readonly startedAt: string }>>;
}

interface MemorySide {
  readonly desk: MemoryDesk;
  readonly journals: JournalDesk;
  readonly handlers: Handlers<keyof ReturnType<typeof memoryHandlers>>;
}

export function memorySide({ options, registry, events, ...ports }: MemorySidePorts): MemorySide {
  const { folder, version, clock, lock } = options;
  const { vault, maps, plans, rack, isCaptured, quiet, openSurvey, startOf, tellImages, tellMaps } = ports;
  const tellJournals = tellLatest(
    () => journals.list(),
    (list) => events.tell('journals.changed', list),
  );
  const noted = (): void => void tellJournals();
  const mapped = (): void => void tellMaps();
  const now = (): Date => clock.now();
  const store = new JournalStore(path.join(folder, 'journals'), now);
  const journals = new JournalDesk(store, vault, (pad) => registry.padOf(pad));
  const desk = new MemoryDesk({
    version,
    clock,
    rack,
    lock,
    vault,
    maps,
    plans,
    store,
    journals,
    protocols: new ProtocolShelf(path.join(folder, 'protocols')),
    gate: new WriteGate(new WriteSwitch(path.join(folder, 'writable-pads.json'), now)),
    isCaptured,
    quiet,
    tell: (state) => events.tell('memory.state', state),
    kept: () => void tellImages(),
    noted,
  });
  return {
    desk,
    journals,
    handlers: memoryHandlers({ desk, journals, store, maps, openSurvey, startOf, noted, mapped }),
  };
}
