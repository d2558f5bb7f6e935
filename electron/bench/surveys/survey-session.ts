/** A guided survey of one open pad: asks, watches, records, and ends with what was taken whatever happens. */
import { END_MARK } from '../../../core/capture/evidence/log-whole.ts';
import { sweepsNeeded } from '../../../core/capture/guide/sweeps-needed.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { Problem } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { Recorder } from '../../store/recorder.ts';
import type { TransportListener } from '../pads/transport.ts';
import type { CaptureRun, CaptureView, SurveyState } from './captures/capture-run.ts';
import type { Clock } from '../time/clock.ts';
import type { HandFollower } from './hand-follower.ts';
import type { PadSession } from '../pads/pad-session.ts';
import { Spacer } from '../time/spacer.ts';
import { edgeMark, startCapture } from './captures/start-capture.ts';
import { planSurvey, SurveyPlan, type PlannedCapture } from './survey-plan.ts';
import { SurveyReader } from './survey-reader.ts';
import { emptyView, takenIn } from './survey-view.ts';
import { endPrompt, readyPrompt, type Asked } from './survey-words.ts';

const TELL_MILLIS = 50;
const TICK_MILLIS = 20;
/** How far behind the clock a silent pad is followed: reports on their way are stamped before this. */
const BEHIND_MICROS = 20_000;
/** A hand that follows says its own yes, after a moment to read. */
const YES_MILLIS = 400;
/** More than this in a capture is said. */
const LONGEST_DELAY_MILLIS = 8;

type Ending = 'done' | 'aborted' | 'failed';

export interface SurveyPorts {
  readonly survey: string;
  readonly clock: Clock;
  readonly pad: PadSession;
  readonly recorder: Recorder;
  /** The clock's micros that the log counts as 0. */
  readonly startMicros: number;
  /** Set while the hand of a simulated pad is to follow; null otherwise. */
  readonly follower: (stick: StickId | null) => HandFollower | null;
  readonly tell: (state: SurveyState) => void;
  /** Called once, when the log is closed. */
  readonly ended: (how: Ending) => Promise<void>;
}

export class SurveySession {
  readonly #request: Request<'survey.start'>;
  readonly #ports: SurveyPorts;
  readonly #plan: SurveyPlan;
  readonly #spacer: Spacer;
  readonly #reader: SurveyReader;
  #run: CaptureRun | null = null;
  /** Rest points of each stick, which its rim is taken about. */
  readonly #rests = new Map<StickId, SurveyState['rests']>();
  /** What the inputs came to, once they are over. */
  #inputs: SurveyState['inputs'] = null;
  #ending: Promise<void> | null = null;
  #step: SurveyState['step'] = 'ready';
  #problem: Problem | null = null;
  #promptNumber = 0;
  #prompt = '';
  #lastMicros: number;
  #untap: () => void = () => undefined;
  #cancelTick: () => void = () => undefined;
  #cancelYes: () => void = () => undefined;

  constructor(request: Request<'survey.start'>, ports: SurveyPorts) {
    this.#request = request;
    this.#ports = ports;
    this.#plan = new SurveyPlan(planSurvey(request, ports.pad.layout));
    this.#reader = new SurveyReader(request.confirmButton);
    this.#spacer = new Spacer(ports.clock, TELL_MILLIS, () => ports.tell(this.state));
    this.#lastMicros = ports.startMicros;
  }

  begin(): void {
    this.#untap = this.#ports.pad.tap(this.#listener);
    this.#tick();
    this.#changed();
  }

  get pad(): string {
    return this.#request.pad;
  }

  get state(): SurveyState {
    const current = this.#plan.current;
    return {
      survey: this.#ports.survey,
      pad: this.#request.pad,
      stage: this.#request.stage,
      stick: current?.stick ?? null,
      step: this.#step,
      ...(this.#run?.view() ?? emptyView(this.#asked, this.#restsOf(current?.stick ?? null))),
      ...(this.#inputs === null ? {} : { inputs: this.#inputs }),
      prompt: this.#prompt,
      promptNumber: this.#promptNumber,
      captures: this.#plan.captures(),
      current: this.#plan.index,
      confirmButton: this.#request.confirmButton,
      problem: this.#problem,
    };
  }

  /** The word of whoever runs the survey. Ending is over when the log is closed. */
  async say(what: Request<'survey.say'>['what']): Promise<void> {
    if (what === 'abort') await this.end('aborted');
    else if (this.#ending !== null) await this.#ending;
    else if (what === 'skip') this.#endCapture('skipped');
    else if (what === 'repeat') this.#run?.repeat(this.#now());
    else this.#confirm();
    this.#changed();
  }

  /** Called with the longest delay of the last second. */
  loopDelayed(millis: number): void {
    if (this.#run === null || millis <= LONGEST_DELAY_MILLIS) return;
    const rounded = Math.round(millis * 10) / 10;
    this.#mark(this.#now(), 'loopDelay', { millis: rounded });
    this.#problem = {
      code: 'loop-delayed',
      says: `This computer was busy for ${rounded} ms, so times in this capture may be late by as much; close other programs.`,
    };
    this.#changed();
  }

  /** Ends the survey with what was taken; every call waits for the same end. */
  end(how: Ending, problem: Problem | null = null): Promise<void> {
    this.#ending ??= this.#finish(how, problem);
    return this.#ending;
  }

  readonly #listener: TransportListener = {
    report: (atMicros, reportId, payload) => {
      this.#lastMicros = Math.max(this.#lastMicros, atMicros);
      this.#ports.recorder.report(atMicros, reportId, payload);
      if (this.#reader.read(this.#ports.pad.layout, reportId, payload)) this.#reading();
    },
    gap: (atMicros, lost) => {
      this.#ports.recorder.gap(atMicros, lost);
      this.#run?.gap();
    },
    lost: (problem) => void this.end('failed', problem),
  };

  #reading(): void {
    if (this.#reader.confirms(this.#lastMicros, this.#step === 'inputs') && this.#ending === null) this.#confirm();
    const current = this.#plan.current;
    if (this.#run === null || current === null) return;
    const reading = this.#reader.readingOf(current.stick);
    if (current.stick !== null && (Number.isNaN(reading.x) || Number.isNaN(reading.y))) return;
    this.#run.reading(this.#logTime(this.#lastMicros), reading);
    this.#afterCapture();
  }

  #confirm(): void {
    if (this.#run === null) this.#startCapture();
    else {
      this.#run.confirm();
      this.#afterCapture();
    }
  }

  /** What is asked for of the stick whose turn it is. */
  get #asked(): Asked {
    const { pad } = this.#ports;
    const fields = pad.layout.sticks[this.#plan.current?.stick ?? 'left'];
    const needed = fields === undefined ? 1 : sweepsNeeded(fields, pad.health().rateHz);
    return { ...this.#request, sweeps: this.#request.sweeps ?? needed };
  }

  #startCapture(): void {
    const current = this.#plan.current;
    if (current === null) return;
    const t = this.#now();
    this.#problem = null;
    this.#markEdge('begin', t);
    this.#run = startCapture(current, {
      layout: this.#ports.pad.layout,
      asked: this.#asked,
      rests: this.#restsOf(current.stick),
      startUs: t,
      mark: (at, name, detail) => this.#mark(at, name, detail),
    });
    if (this.#run === null) return;
    this.#step = current.purpose;
    this.#changed();
  }

  #afterCapture(): void {
    if (this.#run?.isDone === true) this.#endCapture('taken');
    this.#changed();
  }

  #endCapture(state: 'taken' | 'skipped'): void {
    const current = this.#plan.current;
    if (current === null) return;
    if (this.#run !== null) {
      this.#keep(current, this.#run.view());
      this.#markEdge('end', this.#now());
    }
    this.#ports.follower(current.stick)?.stop(current.stick);
    this.#run = null;
    this.#plan.end(state);
    this.#step = 'ready';
    if (this.#plan.current === null) void this.end('done');
  }

  #keep({ purpose, stick }: PlannedCapture, { rests, inputs }: CaptureView): void {
    if (purpose === 'rest' && stick !== null) this.#rests.set(stick, rests);
    this.#inputs = inputs;
  }

  async #finish(how: Ending, problem: Problem | null): Promise<void> {
    const current = this.#plan.current;
    if (this.#run !== null) {
      this.#inputs = this.#run.view().inputs;
      this.#markEdge('end', this.#now());
    }
    this.#untap();
    this.#cancelTick();
    this.#cancelYes();
    if (current !== null) this.#ports.follower(current.stick)?.stop(current.stick);
    this.#mark(this.#now(), END_MARK, {});
    const closed = await this.#ports.recorder.close();
    this.#run = null;
    const ending: Ending = closed.ok ? how : 'failed';
    this.#problem = problem ?? (closed.ok ? null : closed.problem);
    await this.#ports.ended(ending);
    this.#step = ending;
    this.#ask(endPrompt(ending, this.#ports.pad.says));
    this.#spacer.last();
  }

  #changed(): void {
    if (this.#ending !== null) return;
    const current = this.#plan.current;
    if (current === null) return;
    const { confirmButton } = this.#request;
    const first = this.#plan.index === 0 ? this.#ports.pad.says : null;
    this.#ask(this.#run?.prompt ?? readyPrompt(current, this.#asked, confirmButton, first));
    const follower = this.#ports.follower(current.stick);
    const wish = this.#run?.wish() ?? null;
    if (follower !== null && wish !== null) follower.ask(this.#promptNumber, current.stick, wish);
    this.#spacer.call();
  }

  #ask(prompt: string): void {
    if (prompt === this.#prompt) return;
    this.#prompt = prompt;
    this.#promptNumber += 1;
    this.#cancelYes();
    const current = this.#plan.current;
    if (this.#run === null && this.#ending === null && current !== null && this.#ports.follower(current.stick) !== null)
      this.#cancelYes = this.#ports.clock.after(YES_MILLIS, () => void this.say('confirm'));
  }

  #tick(): void {
    this.#cancelTick = this.#ports.clock.after(TICK_MILLIS, () => {
      const until = this.#ports.clock.micros() - BEHIND_MICROS;
      if (this.#run !== null && until > this.#lastMicros) {
        this.#run.advance(this.#logTime(until));
        this.#afterCapture();
      }
      if (this.#isGivenUp()) void this.say('skip');
      if (this.#ending === null) this.#tick();
    });
  }

  #restsOf(stick: StickId | null): SurveyState['rests'] {
    return (stick === null ? undefined : this.#rests.get(stick)) ?? [];
  }

  /** A hand that follows does not try for ever what the pad cannot do. */
  #isGivenUp(): boolean {
    const current = this.#plan.current;
    if (this.#run === null || current === null || this.#ending !== null) return false;
    return this.#ports.follower(current.stick)?.isTired(takenIn(this.#run.view())) === true;
  }

  #markEdge(edge: 'begin' | 'end', t: number): void {
    const current = this.#plan.current;
    if (current === null) return;
    const { name, detail } = edgeMark(current, edge);
    this.#mark(t, name, detail);
  }

  #mark(t: number, name: string, detail: Readonly<Record<string, unknown>>): void {
    this.#ports.recorder.mark(t + this.#ports.startMicros, name, detail);
  }

  #now(): number {
    return this.#logTime(Math.max(this.#lastMicros, this.#ports.clock.micros() - BEHIND_MICROS));
  }

  #logTime(atMicros: number): number {
    return Math.max(0, atMicros - this.#ports.startMicros);
  }
}
