/** What the left column says beside the Memory view's name. */
import type { MemorySession } from './memory-session.svelte.ts';

export function memoryInBrief(memory: Pick<MemorySession, 'writing' | 'journals'>, kept: number): string {
  if (memory.writing) return 'writing';
  if (memory.journals.length > 0) return 'a write broke off';
  return kept === 0 ? 'no image yet' : `${String(kept)} kept`;
}
