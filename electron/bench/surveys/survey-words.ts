/** What a survey asks of the hand, in plain words; read out, they must make sense without the screen. */
import { arrangeWords, disturbanceWords } from '../../../core/capture/evidence/disturbance.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { Request } from '../../../shared/contract.ts';
import type { PlannedCapture } from './survey-plan.ts';

export type Asked = Pick<Request<'survey.start'>, 'releases' | 'turns' | 'flicks'> & { readonly sweeps: number };

/** Dwells asked for under a disturbance. */
export const DISTURBED_DWELLS = 6;

/** Before a capture: what comes, and that it waits for the word to begin; before the first one, whose survey it is. */
export function readyPrompt(
  planned: PlannedCapture,
  asked: Asked,
  confirmButton: number | null,
  pad: string | null,
): string {
  const ready = planned.stick === null ? inputsPrompt(confirmButton) : stickPrompt(planned.stick, planned, asked);
  const begin = confirmButton === null ? 'Confirm to begin.' : `Press button ${confirmButton} to begin.`;
  return `${pad === null ? '' : `Survey of ${pad}. `}${ready} ${begin}`;
}

function inputsPrompt(confirmButton: number | null): string {
  const end =
    confirmButton === null
      ? 'It ends by itself; confirm once more to end without what is missing.'
      : `It ends by itself; hold button ${confirmButton} for two seconds to end without what is missing.`;
  return `Inputs: press and let go of every button, every direction of the hat and both triggers all the way. ${end}`;
}

function stickPrompt(stick: StickId, { purpose, of }: PlannedCapture, asked: Asked): string {
  switch (purpose) {
    case 'rest':
      return `Rest of the ${stick} stick: ${times(asked.releases, 'release')}, each from the direction named. Hold the pad still, let the stick snap back and keep off it.`;
    case 'rim':
      return `Gate of the ${stick} stick: ${times(asked.turns, 'slow turn')} each way along the edge, pressed outward.`;
    case 'travel':
      return `Travel of the ${stick} stick: ${times(asked.sweeps, 'slow sweep')} from edge to edge toward each of right, up, left and down.`;
    case 'flick':
      return `Flicks of the ${stick} stick: ${times(asked.flicks, 'let-go')} from full tilt in each of four directions, all at once.`;
    case 'warmUp':
      return `Warm-up of the ${stick} stick: a release every few seconds until its rest no longer drifts.`;
    case 'disturbance':
    case 'inputs':
      return of === undefined
        ? `The ${stick} stick is next.`
        : `${stick === 'left' ? 'Left' : 'Right'} stick, ${disturbanceWords[of]}: ${times(DISTURBED_DWELLS, 'dwell')}. ${arrangeWords(of, stick)} Skip it where it does not apply.`;
  }
}

export function endPrompt(step: 'done' | 'aborted' | 'failed', pad: string): string {
  if (step === 'done') return `The survey of ${pad}, is complete.`;
  return step === 'aborted'
    ? `The survey of ${pad}, was ended; what was taken is kept.`
    : `The survey of ${pad}, broke off; what was taken is kept.`;
}

function times(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
