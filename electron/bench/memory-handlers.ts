/** The calls around the memory of a pad. */
import { done } from '../../core/result.ts';
import type { CallName } from '../../shared/contract.ts';
import type { Handlers } from './call-handlers.ts';
import type { JournalDesk } from './journal-desk.ts';
import { proveMap, type ProofPorts } from './map-proof.ts';
import type { MemoryDesk } from './memory-desk.ts';

type MemoryCall = Extract<CallName, `memory.${string}` | `journals.${string}` | 'maps.prove'>;

export interface MemoryHandlerPorts extends ProofPorts {
  readonly desk: MemoryDesk;
  readonly journals: JournalDesk;
  readonly noted: () => void;
  readonly mapped: () => void;
}

export function memoryHandlers(ports: MemoryHandlerPorts): Handlers<MemoryCall> {
  const { desk, journals, noted } = ports;
  return {
    'maps.prove': async (request) => {
      const proven = await proveMap(ports, request);
      if (proven.ok) ports.mapped();
      return proven;
    },
    'memory.about': ({ pad }) => desk.about(pad),
    'memory.allow': ({ pad, writing }) => desk.allow(pad, writing),
    'memory.read': ({ pad }) => desk.read(pad),
    'memory.preview': (request) => desk.preview(request),
    'memory.write': (request) => desk.write(request),
    'memory.abort': ({ pad }) => desk.abort(pad),
    'memory.show': ({ pad, journal }) => desk.show(pad, journal),
    'memory.latest': ({ pad }) => done({ state: desk.latest(pad) }),
    'journals.list': async () => done(await journals.list()),
    'journals.all': async () => done(await journals.all()),
    'journals.dismiss': async ({ journal }) => {
      const dismissed = await journals.dismiss(journal);
      if (!dismissed.ok) return dismissed;
      noted();
      return done(await journals.list());
    },
  };
}
