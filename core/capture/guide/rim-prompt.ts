/** What a rim capture asks of the hand, in plain words; read out, they make sense without the screen. */
import type { StickId } from '../../pad/stick.ts';
import type { Turn } from '../evidence/evidence.ts';
import type { MoveWatch } from './move-watch.ts';

/** Where the last turn passed more of the directions between two reports, it was too fast. */
const TOO_FAST = 0.1;
/** Stretches that are named in one breath. */
const NAMED = 3;

interface RimAsk {
  readonly stick: StickId;
  /** The way to turn next; null when all is covered. */
  readonly way: Turn['way'] | null;
  readonly more: number;
  /** Stretches to name, none before the first turn. */
  readonly uncovered: readonly string[];
  /** Enough turns each way are there; only stretches are open. */
  readonly isComplete: boolean;
  readonly missedShare: number;
  /** What is seen where nothing came of it for long. */
  readonly stuck: { readonly seen: MoveWatch; readonly isTurning: boolean } | null;
}

export function rimPrompt(ask: RimAsk): string {
  const { stick, way, more, uncovered, isComplete, missedShare, stuck } = ask;
  if (way === null) return `The gate of the ${stick} stick is covered.`;
  const word = way === 'clockwise' ? 'clockwise' : 'counter-clockwise';
  const turn = `Turn the ${stick} stick ${word} along its gate, pressed outward: ${more === 1 ? 'one more turn' : `${more} more turns`}.`;
  if (isComplete)
    return `${hurry(missedShare)}Not covered yet: ${nameSome(uncovered)}. ${turn} Or confirm to do without.`;
  if (stuck === null) return `${hurry(missedShare)}${turn}`;
  return stuck.isTurning
    ? `The turn has not gone on for a while. ${turn}`
    : `${stuck.seen.says(stick)} Press it outward until the gate stops it. ${turn}`;
}

function hurry(missedShare: number): string {
  return missedShare > TOO_FAST ? 'More slowly: the last turn passed some directions between two reports. ' : '';
}

function nameSome(stretches: readonly string[]): string {
  const rest = stretches.length - NAMED;
  const named = stretches.slice(0, NAMED).join(', ');
  return rest > 0 ? `${named} and ${rest} more` : named;
}
