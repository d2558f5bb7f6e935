/** What a flick capture asks of the hand, in plain words; read out, they make sense without the screen. */
import type { Pair, StickId } from '../../pad/stick.ts';
import { directionWords } from './direction-words.ts';
import type { FlickFault } from '../evidence/flick-watch.ts';
import type { MoveWatch } from './move-watch.ts';

export type FlickPhase = 'waiting' | 'pushing' | 'settling';

interface FlickAsk {
  readonly stick: StickId;
  /** Null when every flick was taken. */
  readonly toward: number | null;
  readonly phase: FlickPhase;
  /** What was wrong with the last flick; null where it was taken. */
  readonly fault: FlickFault | null;
  /** What is seen where the hand was waited for too long. */
  readonly stuck: { readonly seen: MoveWatch; readonly movement: Pair | null } | null;
}

const faultWords: Readonly<Record<FlickFault, string>> = {
  'not-full': 'The stick was not at full tilt.',
  aside: 'By its readings the stick went another way.',
  'led-back': 'The stick was led back, or returns slowly.',
  button: 'A button was down; let go of it.',
  gap: 'Reports were lost in that flick.',
  'pushed-again': 'The stick was pushed again before it had settled.',
};

export function flickPrompt({ stick, toward, phase, fault, stuck }: FlickAsk): string {
  if (toward === null) return `All flicks of the ${stick} stick are taken.`;
  const ask = `Push the ${stick} stick ${directionWords(toward)} to the edge, then let your thumb slip off it all at once.`;
  if (phase === 'settling')
    return stuck === null || stuck.movement === null
      ? `Keep off the ${stick} stick.`
      : `The stick does not settle. Lay the pad down and keep off the ${stick} stick.`;
  if (phase === 'pushing')
    return stuck === null ? ask : `The ${stick} stick is held. Let your thumb slip off it all at once.`;
  if (stuck !== null) return `${stuck.seen.says(stick)} ${ask}`;
  return fault === null ? ask : `${faultWords[fault]} Once more: ${ask.charAt(0).toLowerCase()}${ask.slice(1)}`;
}
