/** A survey in words on a terminal, while it goes on and at its end. */
import type { SurveyState } from '../../bench/capture-run.ts';
import { KEYS_TEXT } from './survey-keys.ts';
import type { Terminal } from './terminal.ts';

const BELL = '\u0007';

/** For a person every prompt with a bell; for a simulated pad, whose hand needs none, each capture alone. */
export function progressTeller(terminal: Terminal, forPerson: boolean): (state: SurveyState) => void {
  let prompt = -1;
  let capture = '';
  let problem: string | null = null;
  if (forPerson) terminal.say(KEYS_TEXT);
  return (state) => {
    const now = `${state.stick ?? ''} ${state.step}`;
    if (forPerson && state.promptNumber !== prompt) terminal.say(`${BELL}${countText(state)}${state.prompt}`);
    else if (!forPerson && now !== capture && state.stick !== null && state.step !== 'ready')
      terminal.say(`${state.stick} stick: ${state.step}`);
    if (state.problem !== null && state.problem.says !== problem && state.step !== 'failed')
      terminal.say(state.problem.says);
    prompt = state.promptNumber;
    capture = now;
    problem = state.problem?.says ?? null;
  };
}

function countText({ step, releases, turns }: SurveyState): string {
  if (step === 'rest') return `[${Math.min(releases.taken + 1, releases.asked)} of ${releases.asked}] `;
  return step === 'rim' ? `[${turns.clockwise} + ${turns.counterClockwise} of ${turns.asked} each way] ` : '';
}

export function surveyText(out: string, { step, sticks }: SurveyState): string {
  const captures = sticks.map(({ stick, rest, rim }) => `  ${stick} stick: rest ${rest}, rim ${rim}`);
  return [`Survey ${step}, report log: ${out}`, ...captures].join('\n');
}
