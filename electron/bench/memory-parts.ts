/** Puts the memory desk together: its folders and its journals. */
import path from 'node:path';
import { JournalStore } from '../store/journal.ts';
import { WriteSwitch } from '../store/write-switch.ts';
import type { BenchOptions } from './bench-options.ts';
import { JournalDesk } from './journal-desk.ts';
import { MemoryDesk } from './memory-desk.ts';
import type { MemoryPorts } from './memory-ports.ts';
import type { PadRegistry } from './pad-registry.ts';
import { ProtocolShelf } from './protocol-shelf.ts';
import { WriteGate } from './write-gate.ts';
import type { Vault } from '../store/vault.ts';

export interface MemoryPartsPorts extends Omit<MemoryPorts, 'store' | 'journals' | 'protocols' | 'gate' | 'vault'> {
  /** The data folder. */
  readonly folder: BenchOptions['folder'];
  readonly vault: Vault;
  readonly registry: Pick<PadRegistry, 'padOf'>;
}

interface MemoryParts {
  readonly desk: MemoryDesk;
  readonly journals: JournalDesk;
  readonly store: JournalStore;
}

export function memoryParts({ folder, registry, ...ports }: MemoryPartsPorts): MemoryParts {
  const now = (): Date => ports.clock.now();
  const { store, journals } = journalParts({ folder, registry, now, vault: ports.vault });
  const desk = new MemoryDesk({
    ...ports,
    store,
    journals,
    protocols: new ProtocolShelf(path.join(folder, 'protocols')),
    gate: new WriteGate(new WriteSwitch(path.join(folder, 'writable-pads.json'), now)),
  });
  return { desk, journals, store };
}

/** The journals alone: they can be listed without a pad. */
export function journalParts({
  folder,
  registry,
  vault,
  now,
}: Pick<MemoryPartsPorts, 'folder' | 'registry' | 'vault'> & { readonly now: () => Date }): Omit<MemoryParts, 'desk'> {
  const store = new JournalStore(path.join(folder, 'journals'), now);
  const journals = new JournalDesk(store, vault, (pad) => registry.padOf(pad));
  return { store, journals };
}
