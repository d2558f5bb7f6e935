/** Every way along the gate that counts. */
import type { RimEvidence, Turn } from './evidence.ts';

/** Whole turns, then the parts of turns. */
export function waysAlong({ turns, parts = [] }: Pick<RimEvidence, 'turns' | 'parts'>): readonly Turn[] {
  return parts.length === 0 ? turns : [...turns, ...parts];
}
