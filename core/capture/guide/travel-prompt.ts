/** What a travel capture asks of the hand, in plain words; read out, they make sense without the screen. */
import { wrapDegrees } from '../../geometry/angle.ts';
import type { StickId } from '../../pad/stick.ts';
import { directionWords } from './direction-words.ts';
import type { MoveWatch } from './move-watch.ts';
import type { SweepFault } from './sweep-watch.ts';

/** `waiting` for the stick at the start, `standing` there, `sweeping`. */
export type TravelPhase = 'waiting' | 'standing' | 'sweeping';

interface TravelAsk {
  readonly stick: StickId;
  /** Null when every sweep was taken. */
  readonly toward: number | null;
  readonly phase: TravelPhase;
  /** What was wrong with the last sweep; null where it was taken. */
  readonly fault: SweepFault | null;
  /** Where the stick stands by its readings, where that is not where it was asked to (degrees). */
  readonly elsewhere: number | null;
  /** What is seen where the hand was waited for too long. */
  readonly stuck: MoveWatch | null;
}

const faultWords: Readonly<Record<SweepFault, string>> = {
  'too-fast': 'More slowly: that sweep was too fast.',
  stopped: 'That sweep stopped half-way.',
  'turned-back': 'That sweep turned back.',
  'off-line': 'That sweep left the straight line.',
  button: 'A button was down in that sweep; let go of it.',
  gap: 'Reports were lost in that sweep.',
};

export function travelPrompt({ stick, toward, phase, fault, elsewhere, stuck }: TravelAsk): string {
  if (toward === null) return `All sweeps of the ${stick} stick are taken.`;
  const [from, to] = [directionWords(wrapDegrees(toward + 180)), directionWords(toward)];
  const ask = `Push the ${stick} stick ${from} to the edge, wait a moment, then lead it slowly through the middle all the way ${to}: three seconds at least, slower tells more.`;
  if (phase === 'standing')
    return stuck === null
      ? `Now slowly through the middle all the way ${to}.`
      : `The ${stick} stick stands. Lead it slowly through the middle all the way ${to}.`;
  if (phase === 'sweeping') return `Slowly on, all the way ${to}, and stop at the edge.`;
  if (elsewhere !== null)
    return `By its readings the ${stick} stick stands ${directionWords(elsewhere)}. Push it ${from}; if you do, hold it there.`;
  if (stuck !== null) return `${stuck.says(stick)} ${ask}`;
  return fault === null ? ask : `${faultWords[fault]} Once more: ${lowerFirst(ask)}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
