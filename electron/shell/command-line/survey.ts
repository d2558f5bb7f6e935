/** `survey`: the guided survey on a terminal; a simulated pad is driven and its time runs as fast as the work allows. */
import type { Stage } from '../../../core/log/header.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { Problem } from '../../../core/result.ts';
import type { SurveyState } from '../../bench/surveys/captures/capture-run.ts';
import { systemClock } from '../../bench/time/clock.ts';
import { OneSurvey, type OneWish } from '../../bench/surveys/one-survey.ts';
import { VirtualClock } from '../../bench/time/virtual-clock.ts';
import { sharedFiles } from '../../store/log-files.ts';
import { createPadLock } from '../../store/pad-lock.ts';
import { programVersion } from '../program-version.ts';
import { choosePad, type PadChoice } from './live-pad.ts';
import { growingOutput, isThere, refuseOverwrite, type GrowingOutput } from './output-files.ts';
import { outputHead } from './output.ts';
import { listenToKeys } from './survey-keys.ts';
import { progressTeller, surveyText } from './survey-progress.ts';
import { parseSteps, sticksOf, type WishedSteps } from './survey-steps.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface SurveyOptions extends PadChoice {
  readonly out: string;
  readonly stage?: Stage;
  readonly stick?: StickId;
  readonly releases: number;
  readonly turns: number;
  readonly sweeps?: number;
  readonly flicks: number;
  readonly steps: string;
  readonly button?: number;
  readonly force?: boolean;
}

export async function surveyPad(terminal: Terminal, options: SurveyOptions): Promise<ExitCode> {
  if ((options.pad === undefined) === (options.demo === undefined)) {
    terminal.say('stickwright: Give either --pad PATH or --demo NAME.');
    return EXIT.usage;
  }
  const wished = parseSteps(options.steps);
  if (!wished.ok) {
    terminal.say(`stickwright: ${wished.problem.says}`);
    return EXIT.usage;
  }
  const refusal = refuseOverwrite(options.out, options.force === true);
  if (refusal !== null) return sayProblem(terminal, refusal);
  const virtual = options.demo === undefined ? null : new VirtualClock(new Date());
  const source = await choosePad(terminal, options, virtual ?? systemClock);
  if (!source.ok) return sayProblem(terminal, source.problem);
  const output = growingOutput(options.out);
  const survey = new OneSurvey({
    version: programVersion,
    log: output.at,
    files: sharedFiles,
    lock: createPadLock(),
    virtual,
    tell: progressTeller(terminal, virtual === null),
  });
  try {
    const started = await survey.start(source.value, wishOf(options, wished.value));
    if (!started.ok) return sayProblem(terminal, started.problem);
    return await tell(terminal, options.out, output, await finish(survey, started.value, virtual === null));
  } finally {
    await survey.close();
  }
}

function wishOf(options: SurveyOptions, wished: WishedSteps): OneWish {
  return {
    stage: options.stage ?? null,
    stick: options.stick ?? null,
    ...wished,
    releases: options.releases,
    turns: options.turns,
    sweeps: options.sweeps ?? null,
    flicks: options.flicks,
    confirmButton: options.button ?? null,
  };
}

/** Until the survey is over; an interrupt ends it with what was taken. */
async function finish(survey: OneSurvey, first: SurveyState, isByHand: boolean): Promise<SurveyState> {
  const interrupt = (): void => survey.say('abort');
  process.once('SIGINT', interrupt);
  const endKeys = isByHand ? listenToKeys((what) => survey.say(what)) : () => undefined;
  const state = await survey.end(first);
  endKeys();
  process.off('SIGINT', interrupt);
  return state;
}

/** A log that is there already gives way to one that is complete, and to no other. */
async function tell(terminal: Terminal, out: string, output: GrowingOutput, state: SurveyState): Promise<ExitCode> {
  const { step, captures } = state;
  const finished = step === 'done' ? await output.finish() : null;
  const log = finished?.ok === true ? out : output.at;
  const problem = finished?.ok === false ? finished.problem : state.problem;
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('survey-end'), log, step, sticks: sticksOf(captures), captures, problem })
      : surveyText(log, state),
  );
  if (finished?.ok === true) return EXIT.done;
  sayProblem(terminal, problem ?? unfinished(log));
  if (log !== out && isThere(log)) terminal.say(`${out} is as it was; what was taken is kept in ${log}.`);
  return EXIT.failed;
}

function unfinished(log: string): Problem {
  return {
    code: 'survey-ended',
    says: `The survey was ended before it was complete; what was taken is kept in ${log}.`,
  };
}
