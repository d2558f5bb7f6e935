/** The steps of a survey as they are named at the terminal, and how they stand at its end. */
import { disturbances, disturbanceWords, type Disturbance } from '../../../core/capture/evidence/disturbance.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { SurveyState } from '../../bench/surveys/captures/capture-run.ts';
import type { SurveyPurpose } from '../../bench/surveys/survey-plan.ts';

type CaptureStates = SurveyState['captures'];

const purposes: Readonly<Record<string, SurveyPurpose>> = {
  'warm-up': 'warmUp',
  rest: 'rest',
  rim: 'rim',
  travel: 'travel',
  flick: 'flick',
  disturbance: 'disturbance',
  inputs: 'inputs',
};
const words = new Map(Object.entries(purposes).map(([word, purpose]) => [purpose, word]));

export const DEFAULT_STEPS = 'rest,rim,travel,flick,inputs';
export const STEPS_TEXT = `${Object.keys(purposes).join(', ')}; a disturbance alone by its name: ${disturbances.join(', ')}`;

export interface WishedSteps {
  readonly steps: SurveyPurpose[];
  readonly disturbances: Disturbance[];
}

/** Names with commas between them; `steps-unknown` names the first that is none. */
export function parseSteps(text: string): Result<WishedSteps> {
  const steps = new Set<SurveyPurpose>();
  const wished = new Set<Disturbance>();
  for (const name of text.split(',').map((part) => part.trim())) {
    const disturbance = disturbances.find((one) => one === name);
    const purpose = disturbance === undefined ? purposes[name] : 'disturbance';
    if (purpose === undefined) return failed('steps-unknown', `There is no step "${name}"; there are ${STEPS_TEXT}.`);
    steps.add(purpose);
    if (disturbance !== undefined) wished.add(disturbance);
    else if (purpose === 'disturbance') for (const one of disturbances) wished.add(one);
  }
  return done({ steps: [...steps], disturbances: [...wished] });
}

/** E.g. `left stick: travel`, `left stick: rest while it rumbles`, `inputs`. */
export function captureWords({ stick, purpose, of }: CaptureStates[number]): string {
  const what = of === null ? (words.get(purpose) ?? purpose) : disturbanceWords[of];
  return stick === null ? what : `${stick} stick: ${what}`;
}

/** How each stick's steps ended, as an object a stick; disturbances stand in `captures` alone. */
export function sticksOf(captures: CaptureStates): ({ stick: StickId } & Record<string, string>)[] {
  return STICKS.flatMap((stick) => {
    const own = captures.filter((one) => one.stick === stick && one.of === null);
    return own.length === 0
      ? []
      : [{ stick, ...Object.fromEntries(own.map(({ purpose, state }) => [purpose, state])) }];
  });
}
