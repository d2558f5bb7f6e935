/** The bench's running surveys over one pad and one log of its own: what the command line surveys with. */
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { LogFiles } from '../../store/log-files.ts';
import type { SurveyState } from './captures/capture-run.ts';
import { systemClock } from '../time/clock.ts';
import { noLoopDelay, watchLoopDelay } from '../time/loop-delay.ts';
import type { PadLock } from '../pads/pad-lock-port.ts';
import { PadSessions } from '../pads/pad-sessions.ts';
import type { PadSource } from '../pads/pad-source.ts';
import { SampleFeed } from '../pads/sample-feed.ts';
import { RunningSurveys } from './running-surveys.ts';
import type { VirtualClock } from '../time/virtual-clock.ts';

const PAD = 'pad';
/** A simulated survey that takes longer than this, in its own time, will never end. */
const LONGEST_MICROS = 3_600_000_000;

export interface OneSurveyOptions {
  readonly version: string;
  /** The log that is written. */
  readonly log: string;
  readonly files: LogFiles;
  readonly lock: PadLock;
  /** The time of a simulated pad, which runs as fast as the work allows; null for a real one. */
  readonly virtual: VirtualClock | null;
  readonly tell: (state: SurveyState) => void;
}

export type OneWish = Omit<Request<'survey.start'>, 'pad' | 'sticks'> & {
  /** Null for every stick of the pad. */
  readonly stick: StickId | null;
};

export type SaidToSurvey = Request<'survey.say'>['what'];

export class OneSurvey {
  readonly #padSessions: PadSessions;
  readonly #running: RunningSurveys;
  readonly #virtual: VirtualClock | null;
  readonly #over: Promise<void>;
  #last: SurveyState | null = null;

  constructor({ version, log, files, lock, virtual, tell }: OneSurveyOptions) {
    const clock = virtual ?? systemClock;
    let woken: () => void = () => undefined;
    this.#over = new Promise<void>((resolve) => (woken = resolve));
    this.#virtual = virtual;
    this.#padSessions = new PadSessions({
      clock,
      feed: new SampleFeed(),
      loopDelay: virtual === null ? watchLoopDelay() : noLoopDelay,
      tellHealth: () => undefined,
      delayed: (millis) => this.#running.loopDelayed(millis),
      changed: () => undefined,
    });
    this.#running = new RunningSurveys({
      version,
      clock,
      padSessions: this.#padSessions,
      keptSurveys: {
        begin: () => Promise.resolve(done({ survey: PAD, log })),
        finish: () => Promise.resolve(done(undefined)),
      },
      lock,
      files,
      quiet: () => undefined,
      tell: (state) => {
        this.#last = state;
        tell(state);
        if (isOver(state)) woken();
      },
      listed: () => undefined,
    });
  }

  /** Opens the pad and begins; the sticks of a simulated pad are moved as the survey asks. */
  async start(source: PadSource, { stick, ...wish }: OneWish): Promise<Result<SurveyState>> {
    const opened = await this.#padSessions.open(PAD, source);
    if (!opened.ok) return opened;
    const pad = this.#padSessions.session(PAD);
    if (!pad.ok) return pad;
    const { layout } = pad.value;
    const there = STICKS.filter((one) => layout.sticks[one] !== undefined);
    if (there.length === 0 && wish.steps.some((step) => step !== 'inputs'))
      return failed('stick-missing', layout.noSticks ?? 'This pad has no stick.');
    if (this.#virtual !== null) for (const one of there) this.#running.follow(PAD, one, true);
    const started = await this.#running.start({ ...wish, pad: PAD, sticks: stick === null ? there : [stick] });
    if (started.ok) this.#last ??= started.value;
    return started;
  }

  say(what: SaidToSurvey): void {
    if (this.#last !== null) void this.#running.say({ survey: this.#last.survey, what });
  }

  /** Its last state, once it is over: by itself, by what was said, or because a simulated pad has come to a stand. */
  async end(first: SurveyState): Promise<SurveyState> {
    const virtual = this.#virtual;
    const state = (): SurveyState => this.#last ?? first;
    if (virtual !== null) {
      await virtual.run(() => isOver(state()) || virtual.micros() > LONGEST_MICROS);
      if (!isOver(state())) this.say('abort');
    }
    await this.#over;
    return state();
  }

  close(): Promise<void> {
    return this.#padSessions.stop();
  }
}

function isOver({ step }: SurveyState): boolean {
  return step === 'done' || step === 'aborted' || step === 'failed';
}
