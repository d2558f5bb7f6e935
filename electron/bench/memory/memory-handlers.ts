/** The calls around the memory of a pad. */
import { done } from '../../../core/result.ts';
import type { CallName } from '../../../shared/contract.ts';
import type { Handlers } from '../calls/call-handlers.ts';
import type { OpenJournals } from './open-journals.ts';
import { proveMap, type ProofPorts } from './map-proof.ts';
import type { MemorySessions } from './memory-sessions.ts';

type MemoryCall = Extract<CallName, `memory.${string}` | `journals.${string}` | 'maps.prove'>;

export interface MemoryHandlerPorts extends ProofPorts {
  readonly sessions: MemorySessions;
  readonly journals: OpenJournals;
  readonly noted: () => void;
  readonly mapped: () => void;
}

export function memoryHandlers(ports: MemoryHandlerPorts): Handlers<MemoryCall> {
  const { sessions, journals, noted } = ports;
  return {
    'maps.prove': async (request) => {
      const proven = await proveMap(ports, request);
      if (proven.ok) ports.mapped();
      return proven;
    },
    'memory.about': ({ pad }) => sessions.about(pad),
    'memory.allow': ({ pad, writing }) => sessions.allow(pad, writing),
    'memory.read': ({ pad }) => sessions.read(pad),
    'memory.preview': (request) => sessions.preview(request),
    'memory.write': (request) => sessions.write(request),
    'memory.abort': ({ pad }) => sessions.abort(pad),
    'memory.show': ({ pad, journal }) => sessions.show(pad, journal),
    'memory.latest': ({ pad }) => done({ state: sessions.latest(pad) }),
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
