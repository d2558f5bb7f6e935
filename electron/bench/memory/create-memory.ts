/** Memory sessions behind the contract, and what it tells. */
import path from 'node:path';
import type { Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { JournalStore } from '../../store/journal.ts';
import type { Vault } from '../../store/image-vault.ts';
import { WriteSwitch } from '../../store/write-switch.ts';
import type { Handlers } from '../calls/call-handlers.ts';
import type { EventFeed } from '../calls/event-feed.ts';
import { OpenJournals } from './open-journals.ts';
import type { KnownMaps } from './known-maps.ts';
import { MemorySessions } from './memory-sessions.ts';
import { memoryHandlers } from './memory-handlers.ts';
import type { MemoryNeeds } from './memory-needs.ts';
import type { PadLock } from '../pads/pad-lock-port.ts';
import type { PadSessions } from '../pads/pad-sessions.ts';
import type { KnownPads } from '../pads/known-pads.ts';
import type { Clock } from '../time/clock.ts';
import type { ShownPlans } from './shown-plans.ts';
import { KnownProtocols } from './known-protocols.ts';
import { tellLatest } from '../calls/tell-latest.ts';
import { WriteGate } from './write-gate.ts';

export interface MemoryOptions extends Pick<MemoryNeeds, 'isCaptured' | 'quiet'> {
  readonly options: {
    /** The data folder. */
    readonly folder: string;
    readonly version: string;
    readonly clock: Clock;
    readonly lock: PadLock;
  };
  readonly padSessions: PadSessions;
  readonly registry: Pick<KnownPads, 'padOf'>;
  readonly vault: Vault;
  readonly maps: KnownMaps;
  readonly plans: ShownPlans;
  readonly events: EventFeed;
  readonly openSurvey: (survey: string) => Promise<Result<Reply<'surveys.open'>>>;
  readonly tellImages: () => Promise<unknown>;
  readonly tellMaps: () => Promise<unknown>;
  readonly startOf: (survey: string) => Promise<Result<{ readonly startedAt: string }>>;
}

interface Memory {
  readonly sessions: MemorySessions;
  readonly journals: OpenJournals;
  readonly handlers: Handlers<keyof ReturnType<typeof memoryHandlers>>;
}

export function createMemory({ options, registry, events, ...ports }: MemoryOptions): Memory {
  const { folder, version, clock, lock } = options;
  const { vault, maps, plans, padSessions, isCaptured, quiet, openSurvey, startOf, tellImages, tellMaps } = ports;
  const tellJournals = tellLatest(
    () => journals.list(),
    (list) => events.tell('journals.changed', list),
  );
  const noted = (): void => void tellJournals();
  const mapped = (): void => void tellMaps();
  const now = (): Date => clock.now();
  const store = new JournalStore(path.join(folder, 'journals'), now);
  const journals = new OpenJournals(store, vault, (pad) => registry.padOf(pad));
  const sessions = new MemorySessions({
    version,
    clock,
    padSessions,
    lock,
    vault,
    maps,
    plans,
    store,
    journals,
    protocols: new KnownProtocols(path.join(folder, 'protocols')),
    gate: new WriteGate(new WriteSwitch(path.join(folder, 'writable-pads.json'), now)),
    isCaptured,
    quiet,
    tell: (state) => events.tell('memory.state', state),
    kept: () => void tellImages(),
    noted,
  });
  return {
    sessions,
    journals,
    handlers: memoryHandlers({ sessions, journals, store, maps, openSurvey, startOf, noted, mapped }),
  };
}
