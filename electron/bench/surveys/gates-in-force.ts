/** What a survey's gates are known from, with the logs that tell them. */
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { GateLog, GateLogs } from '../measure/gate-logs.ts';
import type { ChosenGates, GateChoices } from './gate-choices.ts';
import { logState } from './kept-measures.ts';
import type { KeptSurveys } from './kept-surveys.ts';

export interface GatesInForce {
  readonly chosen: ChosenGates;
  readonly logs: GateLogs;
  /** Why the survey that was chosen for a stick cannot tell its gate. */
  readonly gone: Readonly<Partial<Record<StickId, Problem>>>;
  /** Another choice, or another state of a log that was chosen, reads otherwise. */
  readonly says: string;
}

export async function gatesInForce(
  survey: string,
  kept: KeptSurveys,
  choices: GateChoices,
): Promise<Result<GatesInForce>> {
  const read = await choices.read(survey);
  if (!read.ok) return read;
  const logs: Partial<Record<StickId, GateLog>> = {};
  const gone: Partial<Record<StickId, Problem>> = {};
  const says: string[] = [];
  for (const stick of STICKS) {
    const choice = read.value[stick];
    if (choice === undefined) continue;
    const log = await kept.logOf(choice.survey);
    if (log.ok) {
      logs[stick] = { file: log.value, from: choice.from };
      says.push(`${stick} ${choice.from} ${choice.survey} ${await logState(log.value)}`);
    } else
      gone[stick] = failed(
        'gate-survey-gone',
        'The survey that the gate was known from is no longer there; choose another one.',
      ).problem;
  }
  return done({ chosen: read.value, logs, gone, says: says.join(', ') });
}
