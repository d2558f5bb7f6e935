/** What a rest capture asks of the hand, in plain words; read out, they make sense without the screen. */
import type { Pair } from '../../pad/stick.ts';
import type { GuideOptions } from './capture-guide.ts';
import { directionWords } from './direction-words.ts';
import type { MoveWatch } from './move-watch.ts';
import { settleLimit } from '../evidence/settle-detector.ts';

export type RestPhase = 'waiting' | 'pushing' | 'settling' | 'dwelling';

/** What is seen where the hand was waited for too long. */
interface Stuck {
  readonly seen: MoveWatch;
  readonly movement: Pair | null;
  readonly isButtonDown: boolean;
}

export function restPrompt(
  { stick, fields }: GuideOptions,
  phase: RestPhase,
  toward: number | null,
  stuck: Stuck | null,
): string {
  if (toward === null) return `All releases of the ${stick} stick are taken.`;
  const push = `Push the ${stick} stick ${directionWords(toward)} as far as it goes, then let it snap back.`;
  switch (phase) {
    case 'waiting':
      return stuck === null ? push : `${stuck.seen.says(stick)} ${push}`;
    case 'pushing':
      return stuck === null ? push : `The ${stick} stick is held. Let it snap back and keep off it.`;
    case 'dwelling':
      return `Keep off the ${stick} stick.`;
    case 'settling':
      if (stuck === null) return `Keep off the ${stick} stick.`;
      return stuck.isButtonDown
        ? 'A button is down, and only releases with none down count. Let go of it.'
        : `${sayUnrest(stuck.movement, settleLimit(fields.x), settleLimit(fields.y))} Lay the pad down and keep off the ${stick} stick.`;
  }
}

/** How far it still moves against what settling allows, in counts. */
function sayUnrest(movement: Pair | null, xLimit: number, yLimit: number): string {
  if (movement === null) return 'The stick does not settle.';
  const [axis, moves, limit] =
    movement.x / xLimit > movement.y / yLimit ? ['x', movement.x, xLimit] : ['y', movement.y, yLimit];
  return `The stick does not settle: in a tenth of a second ${axis} moves by ${round(moves)} counts, where ${round(limit)} is still.`;
}

function round(counts: number): string {
  return counts < 10 ? counts.toFixed(1) : String(Math.round(counts));
}
