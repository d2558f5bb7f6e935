/** A guided survey of one open pad: asks, watches, records, and ends with what was taken whatever happens. */
import type { WriteMark } from '../../core/capture/capture-guide.ts';
import { createReadingDecoder, type ReadingDecoder } from '../../core/pad/decode-reading.ts';
import type { PadLayout } from '../../core/pad/layout.ts';
import { createReadingSlot } from '../../core/pad/reading-slot.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Problem } from '../../core/result.ts';
import type { Request } from '../../shared/contract.ts';
import type { Recorder } from '../store/recorder.ts';
import type { TransportListener } from '../transport/transport.ts';
import type { CaptureRun, SurveyState } from './capture-run.ts';
import type { Clock } from './clock.ts';
import type { HandFollower } from './hand-follower.ts';
import type { PadSession } from './pad-session.ts';
import { Spacer } from './spacer.ts';
import { startCapture } from './start-capture.ts';
import { SurveyPlan } from './survey-plan.ts';
import { endPrompt, readyPrompt } from './survey-words.ts';
import { emptyView } from './survey-view.ts';

const TELL_MILLIS = 50;
const TICK_MILLIS = 20;
/** How far behind the clock a silent pad is followed: reports on their way are stamped before this. */
const BEHIND_MICROS = 20_000;
/** A hand that follows says its own yes, after a moment to read. */
const YES_MILLIS = 400;
/** DESIGN, shape: more than this in a capture is said. */
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
  readonly follower: (stick: StickId) => HandFollower | null;
  readonly tell: (state: SurveyState) => void;
  /** Called once, when the log is closed. */
  readonly ended: (how: Ending) => Promise<void>;
}

export class SurveySession {
  readonly #request: Request<'survey.start'>;
  readonly #ports: SurveyPorts;
  readonly #plan: SurveyPlan;
  readonly #spacer: Spacer;
  readonly #slot = createReadingSlot();
  #layout: PadLayout | null = null;
  #decoder: ReadingDecoder | null = null;
  #run: CaptureRun | null = null;
  /** Rest points of each stick, which its rim is taken about. */
  readonly #rests = new Map<string, SurveyState['rests']>();
  #ending: Promise<void> | null = null;
  #step: SurveyState['step'] = 'ready';
  #problem: Problem | null = null;
  #promptNumber = 0;
  #prompt = '';
  #lastMicros: number;
  #confirmDown = false;
  #untap: () => void = () => undefined;
  #cancelTick: () => void = () => undefined;
  #cancelYes: () => void = () => undefined;

  constructor(request: Request<'survey.start'>, ports: SurveyPorts) {
    this.#request = request;
    this.#ports = ports;
    this.#plan = new SurveyPlan(request.sticks);
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
    const rests = current === null ? [] : (this.#rests.get(current.stick) ?? []);
    return {
      survey: this.#ports.survey,
      pad: this.#request.pad,
      stage: this.#request.stage,
      stick: current?.stick ?? null,
      step: this.#step,
      ...(this.#run?.view() ?? emptyView(this.#request, rests)),
      prompt: this.#prompt,
      promptNumber: this.#promptNumber,
      sticks: this.#plan.sticks(),
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
      if (this.#decode(reportId, payload)) this.#reading();
    },
    gap: (atMicros, lost) => {
      this.#ports.recorder.gap(atMicros, lost);
      this.#run?.gap();
    },
    lost: (problem) => void this.end('failed', problem),
  };

  /** The layout may settle only once reports have come. */
  #decode(reportId: number, payload: Uint8Array): boolean {
    const { layout } = this.#ports.pad;
    if (this.#decoder === null || this.#layout !== layout) this.#decoder = createReadingDecoder(layout);
    this.#layout = layout;
    return this.#decoder.read(reportId, payload, this.#slot) === 'reading';
  }

  #reading(): void {
    const [first = 0, second = 0, third = 0, fourth = 0] = this.#slot.buttons;
    this.#watchConfirm();
    const stick = this.#plan.current?.stick;
    if (this.#run === null || stick === undefined) return;
    const at = stick === 'left' ? 0 : 2;
    const [x = Number.NaN, y = Number.NaN] = [this.#slot.axes[at], this.#slot.axes[at + 1]];
    if (Number.isNaN(x) || Number.isNaN(y)) return;
    this.#run.reading(this.#logTime(this.#lastMicros), x, y, (first | second | third | fourth) !== 0);
    this.#afterCapture();
  }

  #watchConfirm(): void {
    const button = this.#request.confirmButton;
    if (button === null) return;
    const down = (((this.#slot.buttons[(button - 1) >>> 5] ?? 0) >>> ((button - 1) & 31)) & 1) === 1;
    if (down && !this.#confirmDown && this.#ending === null) this.#confirm();
    this.#confirmDown = down;
  }

  #confirm(): void {
    if (this.#run === null) this.#startCapture();
    else {
      this.#run.confirm();
      this.#afterCapture();
    }
  }

  #startCapture(): void {
    const current = this.#plan.current;
    const fields = current === null ? undefined : this.#ports.pad.layout.sticks[current.stick];
    if (current === null || fields === undefined) return;
    const t = this.#now();
    this.#problem = null;
    this.#mark(t, 'capture', { ...current, edge: 'begin' });
    const mark: WriteMark = (at, name, detail) => this.#mark(at, name, detail);
    const rests = this.#rests.get(current.stick) ?? [];
    const options = { stick: current.stick, fields, startUs: t, mark };
    this.#run = startCapture(current.purpose, options, this.#request, rests);
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
      this.#rests.set(current.stick, this.#run.view().rests);
      this.#mark(this.#now(), 'capture', { ...current, edge: 'end' });
    }
    this.#run = null;
    this.#plan.end(state);
    this.#step = 'ready';
    if (this.#plan.current === null) void this.end('done');
  }

  async #finish(how: Ending, problem: Problem | null): Promise<void> {
    const current = this.#plan.current;
    if (this.#run !== null && current !== null) this.#mark(this.#now(), 'capture', { ...current, edge: 'end' });
    this.#untap();
    this.#cancelTick();
    this.#cancelYes();
    if (current !== null) this.#ports.follower(current.stick)?.stop();
    const closed = await this.#ports.recorder.close();
    this.#run = null;
    const ending: Ending = closed.ok ? how : 'failed';
    this.#problem = problem ?? (closed.ok ? null : closed.problem);
    await this.#ports.ended(ending);
    this.#step = ending;
    this.#ask(endPrompt(ending));
    this.#spacer.last();
  }

  #changed(): void {
    if (this.#ending !== null) return;
    const current = this.#plan.current;
    if (current === null) return;
    this.#ask(this.#run?.prompt ?? readyPrompt(current, this.#request, this.#request.confirmButton));
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
      if (this.#ending === null) this.#tick();
    });
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
