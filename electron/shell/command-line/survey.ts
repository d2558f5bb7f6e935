/** `survey`: the guided survey on a terminal; a simulated pad is driven and its time runs as fast as the work allows. */
import type { Stage } from '../../../core/log/header.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Problem } from '../../../core/result.ts';
import type { SurveyState } from '../../bench/capture-run.ts';
import { systemClock } from '../../bench/clock.ts';
import { noLoopDelay, watchLoopDelay } from '../../bench/loop-delay.ts';
import { PadRack } from '../../bench/pad-rack.ts';
import { SampleBoard } from '../../bench/sample-board.ts';
import { SurveyDesk } from '../../bench/survey-desk.ts';
import { VirtualClock } from '../../bench/virtual-clock.ts';
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

const PAD = 'pad';
/** A simulated survey that takes longer than this, in its own time, will never end. */
const LONGEST_MICROS = 3_600_000_000;

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
  const bench = smallBench(output.at, virtual, progressTeller(terminal, virtual === null));
  try {
    const opened = await bench.rack.open(PAD, source.value);
    if (!opened.ok) return sayProblem(terminal, opened.problem);
    const started = await start(bench.desk, bench.rack, options, wished.value);
    if (!started.ok) return sayProblem(terminal, started.problem);
    const state = await finish(bench, started.value, virtual);
    return await tell(terminal, options.out, output, state);
  } finally {
    await bench.rack.stop();
  }
}

/** The bench's own survey desk over one pad and one log. */
function smallBench(out: string, virtual: VirtualClock | null, progress: (state: SurveyState) => void) {
  const clock = virtual ?? systemClock;
  let last: SurveyState | null = null;
  let woken: () => void = () => undefined;
  const over = new Promise<void>((resolve) => (woken = resolve));
  const rack = new PadRack({
    clock,
    board: new SampleBoard(),
    loopDelay: virtual === null ? watchLoopDelay() : noLoopDelay,
    tellHealth: () => undefined,
    delayed: (millis) => desk.loopDelayed(millis),
    changed: () => undefined,
  });
  const desk: SurveyDesk = new SurveyDesk({
    version: programVersion,
    clock,
    rack,
    shelf: {
      begin: () => Promise.resolve(done({ survey: PAD, log: out })),
      finish: () => Promise.resolve(done(undefined)),
    },
    lock: createPadLock(),
    files: sharedFiles,
    quiet: () => undefined,
    tell: (state) => {
      last = state;
      progress(state);
      if (isOver(state)) woken();
    },
    listed: () => undefined,
  });
  return { rack, desk, over, last: () => last };
}

function start(desk: SurveyDesk, rack: PadRack, options: SurveyOptions, wished: WishedSteps) {
  const pad = rack.session(PAD);
  if (!pad.ok) return Promise.resolve(pad);
  const there = STICKS.filter((stick) => pad.value.layout.sticks[stick] !== undefined);
  if (there.length === 0 && wished.steps.some((step) => step !== 'inputs'))
    return Promise.resolve(failed('stick-missing', pad.value.layout.noSticks ?? 'This pad has no stick.'));
  if (options.demo !== undefined) for (const stick of there) desk.follow(PAD, stick, true);
  return desk.start({
    pad: PAD,
    stage: options.stage ?? null,
    sticks: options.stick === undefined ? there : [options.stick],
    ...wished,
    releases: options.releases,
    turns: options.turns,
    sweeps: options.sweeps ?? null,
    flicks: options.flicks,
    confirmButton: options.button ?? null,
  });
}

/** Until the survey is over; an interrupt ends it with what was taken. */
async function finish(
  bench: ReturnType<typeof smallBench>,
  first: SurveyState,
  virtual: VirtualClock | null,
): Promise<SurveyState> {
  const say = (what: 'confirm' | 'repeat' | 'skip' | 'abort'): void =>
    void bench.desk.say({ survey: first.survey, what });
  const interrupt = (): void => say('abort');
  process.once('SIGINT', interrupt);
  const endKeys = virtual === null ? listenToKeys(say) : () => undefined;
  const state = (): SurveyState => bench.last() ?? first;
  if (virtual !== null && !(await virtual.run(() => isOver(state()) || virtual.micros() > LONGEST_MICROS)))
    say('abort');
  if (virtual !== null && !isOver(state())) say('abort');
  await bench.over;
  endKeys();
  process.off('SIGINT', interrupt);
  return state();
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

function isOver({ step }: SurveyState): boolean {
  return step === 'done' || step === 'aborted' || step === 'failed';
}
