/** How a memory session ended, in one sentence. */
import type { SessionState } from './memory-session.svelte.ts';

export interface EndWords {
  readonly kind: 'good' | 'plain' | 'bad';
  readonly mark: string;
  readonly says: string;
}

const DOING: Readonly<Record<SessionState['doing'], string>> = {
  read: 'reading',
  write: 'the write',
  finish: 'finishing the write',
  restore: 'the restore',
  show: 'the look at the pad',
};

export function endWords({ doing, end }: Pick<SessionState, 'doing' | 'end'>): EndWords {
  if (end === 'read') return { kind: 'good', mark: '✓', says: 'Read twice, equal, and kept.' };
  if (end === 'after')
    return doing === 'show'
      ? { kind: 'good', mark: '✓', says: 'The pad holds what was planned, whole.' }
      : { kind: 'good', mark: '✓', says: 'Written, read back and compared: the pad holds what was planned.' };
  if (end === 'before')
    return { kind: 'plain', mark: '○', says: 'The pad holds what it held before; nothing of the plan is left in it.' };
  if (end === 'differs')
    return {
      kind: 'bad',
      mark: '!',
      says: 'The pad holds neither what it held before nor what was planned: these bytes differ. Restore it.',
    };
  return { kind: 'bad', mark: '!', says: `Not done: ${DOING[doing]} ended early.` };
}
