/** What a gate may be known from, in the words of the screen. */
import type { GateSource } from '../../core/findings/outline/known-gate.ts';
import { WAVE_SIGMA } from '../../core/findings/outline/gate-prior.ts';

export interface GateWords {
  /** What was surveyed; in a list of choices and in a sentence. */
  readonly of: string;
  /** What it means and when to use it. */
  readonly means: string;
}

export const GATE_UNKNOWN = {
  says: `not known: ± ${String(100 * WAVE_SIGMA)} % out of round`,
  means:
    'No moulded gate is quite round, which can hide a tilt or a short side. Another survey in this shell tells the gate from the part.',
} as const;

export const GATE_WORDS: Readonly<Record<GateSource, GateWords>> = {
  'earlier part': {
    of: 'an earlier sound part in this shell',
    means:
      'Another part that stood in this shell and was found sound, e.g. the old one, surveyed before it was taken out.',
  },
  'reference part': {
    of: 'a reference part in this shell',
    means:
      'A part known to stand straight and to read alike on all sides, fitted into this very shell for that survey.',
  },
  'ring turned': {
    of: 'this part, the ring turned by 180°',
    means:
      'This very part, surveyed once more with the ring of the gate turned by 180° and nothing else moved: the finest look.',
  },
};

/** Of findings that are judged with a known gate; `line` names the survey that tells of it. */
export function sayJudgedWith(from: GateSource, line: string): string {
  return `Judged with the gate known from ${GATE_WORDS[from].of}; its survey: ${line}.`;
}
