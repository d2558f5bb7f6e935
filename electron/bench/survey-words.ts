/** What a survey asks of the hand, in plain words; read out, they must make sense without the screen. */
import type { PlannedCapture } from './survey-plan.ts';

export interface Asked {
  readonly releases: number;
  readonly turns: number;
}

/** Before a capture: what comes, and that it waits for the word to begin. */
export function readyPrompt({ stick, purpose }: PlannedCapture, asked: Asked, confirmButton: number | null): string {
  const begin = confirmButton === null ? 'Confirm to begin.' : `Press button ${confirmButton} to begin.`;
  return purpose === 'rest'
    ? `Rest of the ${stick} stick: ${times(asked.releases, 'release')}, each from the direction named. Hold the pad still, let the stick snap back and keep off it. ${begin}`
    : `Gate of the ${stick} stick: ${times(asked.turns, 'slow turn')} each way along the edge, pressed outward. ${begin}`;
}

export function endPrompt(step: 'done' | 'aborted' | 'failed'): string {
  if (step === 'done') return 'The survey is complete.';
  return step === 'aborted'
    ? 'The survey was ended; what was taken is kept.'
    : 'The survey broke off; what was taken is kept.';
}

function times(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
