/** The calls around the memory of a pad. */
import { failed } from '../../core/result.ts';
import type { CallName } from '../../shared/contract.ts';
import type { Handlers } from './call-handlers.ts';

type MemoryCall = Extract<CallName, `memory.${string}` | `journals.${string}` | 'maps.prove'>;

export function memoryHandlers(): Handlers<MemoryCall> {
  const none = (): ReturnType<typeof failed> =>
    failed('memory-none', 'This build reads no memory over the cable; work on an image file.');
  return {
    'maps.prove': none,
    'memory.about': none,
    'memory.allow': none,
    'memory.read': none,
    'memory.preview': none,
    'memory.write': none,
    'memory.abort': none,
    'memory.show': none,
    'memory.latest': none,
    'journals.list': none,
    'journals.dismiss': none,
  };
}
