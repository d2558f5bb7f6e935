/** A survey in words on a terminal, while it goes on and at its end. */
import type { SurveyState } from '../../bench/surveys/captures/capture-run.ts';
import { KEYS_TEXT } from './survey-keys.ts';
import { captureWords } from './survey-steps.ts';
import type { Terminal } from './terminal.ts';

const BELL = '\u0007';

/** For a person every prompt with a bell; for a simulated pad, whose hand needs none, each capture alone. */
export function progressTeller(terminal: Terminal, forPerson: boolean): (state: SurveyState) => void {
  let prompt = -1;
  let capture = -1;
  let problem: string | null = null;
  if (forPerson) terminal.say(KEYS_TEXT);
  return (state) => {
    const current = state.current === null ? undefined : state.captures[state.current];
    const isUnderWay = state.step !== 'ready' && current !== undefined;
    if (forPerson && state.promptNumber !== prompt) terminal.say(`${BELL}${countText(state)}${state.prompt}`);
    else if (!forPerson && isUnderWay && state.current !== capture) terminal.say(captureWords(current));
    if (state.problem !== null && state.problem.says !== problem && state.step !== 'failed')
      terminal.say(state.problem.says);
    prompt = state.promptNumber;
    if (isUnderWay && state.current !== null) capture = state.current;
    problem = state.problem?.says ?? null;
  };
}

function countText({ step, releases, turns, sweeps, flicks, warmUp, inputs }: SurveyState): string {
  switch (step) {
    case 'rest':
    case 'disturbance':
      return countOf(releases.taken, releases.asked);
    case 'rim':
      return `[${turns.clockwise} + ${turns.counterClockwise} of ${turns.asked} each way] `;
    case 'travel':
      return countOf(sweeps.taken.length, sweeps.asked);
    case 'flick':
      return countOf(flicks.taken.length, flicks.asked);
    case 'warmUp':
      return `[${warmUp?.dwells ?? 0} taken] `;
    case 'inputs':
      return inputs === null
        ? ''
        : `[${inputs.filter(({ missing }) => missing === null).length} of ${inputs.length} seen] `;
    case 'ready':
    case 'done':
    case 'aborted':
    case 'failed':
      return '';
  }
}

function countOf(taken: number, asked: number): string {
  return `[${Math.min(taken + 1, asked)} of ${asked}] `;
}

export function surveyText(out: string, { step, captures }: SurveyState): string {
  const lines = captures.map((capture) => `  ${captureWords(capture)} ${capture.state}`);
  return [`Survey ${step}, report log: ${out}`, ...lines].join('\n');
}
