/** Surveys under way: starts them on open pads, one a pad, and passes words on to them. */
import type { LogHeader } from '../../../core/log/header.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { LogFiles } from '../../store/log-files.ts';
import { openRecorder, type Recorder } from '../../store/recorder.ts';
import type { SurveyState } from './captures/capture-run.ts';
import type { Clock } from '../time/clock.ts';
import { HandFollower } from './hand-follower.ts';
import type { PadLock } from '../pads/pad-lock-port.ts';
import type { PadSessions } from '../pads/pad-sessions.ts';
import type { PadSession } from '../pads/pad-session.ts';
import type { KeptSurveys } from './kept-surveys.ts';
import { SurveySession } from './survey-session.ts';

export interface DeskPorts {
  readonly version: string;
  readonly clock: Clock;
  readonly padSessions: PadSessions;
  /** Where the logs go. */
  readonly keptSurveys: Pick<KeptSurveys, 'begin' | 'finish'>;
  readonly lock: PadLock;
  readonly files?: LogFiles;
  /** True while a capture must not be disturbed by looking for pads. */
  readonly quiet: (wanted: boolean) => void;
  readonly tell: (state: SurveyState) => void;
  /** The list of kept surveys has changed. */
  readonly listed: () => void;
}

export class RunningSurveys {
  readonly #ports: DeskPorts;
  readonly #surveys = new Map<string, SurveySession>();
  /** Surveys that are not over, by pad. */
  readonly #underway = new Map<string, SurveySession>();
  /** Pads that a survey is being started on. */
  readonly #starting = new Set<string>();
  /** Sticks of simulated pads whose hand does what is asked. */
  readonly #following = new Map<string, Set<StickId>>();

  constructor(ports: DeskPorts) {
    this.#ports = ports;
  }

  follow(pad: string, stick: StickId, follows: boolean): void {
    const sticks = this.#following.get(pad) ?? new Set();
    this.#following.set(pad, sticks);
    if (follows) sticks.add(stick);
    else sticks.delete(stick);
  }

  async start(request: Request<'survey.start'>): Promise<Result<SurveyState>> {
    const pad = this.#ports.padSessions.session(request.pad);
    if (!pad.ok) return pad;
    const refusal = this.#refusal(request, pad.value);
    if (refusal !== null) return refusal;
    this.#starting.add(request.pad);
    try {
      return await this.#begin(request, pad.value);
    } finally {
      this.#starting.delete(request.pad);
    }
  }

  async #begin(request: Request<'survey.start'>, pad: PadSession): Promise<Result<SurveyState>> {
    const { transport } = pad.source;
    const lost = (problem: Problem): void => void this.#underway.get(request.pad)?.end('failed', problem);
    const release =
      transport.lockKey === undefined
        ? done(nothingToFree)
        : await this.#ports.lock.take(transport.identity, transport.lockKey, lost);
    if (!release.ok) return release;
    const started = await this.#record(request, pad, release.value);
    if (!started.ok) await release.value();
    return started;
  }

  async say({ survey, what }: Request<'survey.say'>): Promise<Result<SurveyState>> {
    const session = this.#surveys.get(survey);
    if (session === undefined)
      return failed('survey-unknown', 'This survey is not under way in this run of the program; start a new one.');
    await session.say(what);
    return done(session.state);
  }

  isUnderway(pad: string): boolean {
    return this.#underway.has(pad) || this.#starting.has(pad);
  }

  /** States of the surveys that are not over. */
  underway(): SurveyState[] {
    return [...this.#underway.values()].map((session) => session.state);
  }

  loopDelayed(millis: number): void {
    for (const session of this.#underway.values()) session.loopDelayed(millis);
  }

  /** Before a pad is closed: its survey ends with what was taken. */
  async endOf(pad: string): Promise<void> {
    await this.#underway.get(pad)?.end('aborted');
  }

  async endAll(): Promise<void> {
    await Promise.all([...this.#underway.values()].map((session) => session.end('aborted')));
  }

  /** The inputs are the pad's: they are done where any stick is. */
  #follows(pad: string, stick: StickId | null): boolean {
    const sticks = this.#following.get(pad);
    return sticks !== undefined && (stick === null ? sticks.size > 0 : sticks.has(stick));
  }

  #refusal(request: Request<'survey.start'>, pad: PadSession): ReturnType<typeof failed> | null {
    if (this.isUnderway(request.pad))
      return failed('survey-underway', 'A survey of this pad is under way already; end it before a new one.');
    const missing = request.sticks.find((stick) => pad.layout.sticks[stick] === undefined);
    if (missing === undefined) return null;
    return failed('stick-missing', pad.layout.noSticks ?? `This pad has no ${missing} stick; choose the other one.`);
  }

  async #record(
    request: Request<'survey.start'>,
    pad: PadSession,
    release: () => Promise<void>,
  ): Promise<Result<SurveyState>> {
    const { clock, keptSurveys } = this.#ports;
    const header = headerOf(request, pad, this.#ports);
    const place = await keptSurveys.begin(header);
    if (!place.ok) return place;
    const startMicros = clock.micros();
    const recorder = await openRecorder(place.value.log, header, {
      clock,
      startMicros,
      ...(this.#ports.files === undefined ? {} : { files: this.#ports.files }),
      onProblem: (problem) => void this.#surveys.get(place.value.survey)?.end('failed', problem),
    });
    if (!recorder.ok) return recorder;
    const { survey } = place.value;
    const { hand } = pad.source;
    const follower = hand === null ? null : new HandFollower(hand, clock);
    const session: SurveySession = new SurveySession(request, {
      survey,
      clock,
      pad,
      recorder: recorder.value,
      startMicros,
      follower: (stick) => (this.#follows(request.pad, stick) ? follower : null),
      tell: this.#ports.tell,
      ended: async (how) => {
        this.#underway.delete(request.pad);
        if (how === 'done') await keptSurveys.finish(survey);
        await release();
        this.#ports.quiet(this.#underway.size > 0);
        this.#ports.listed();
      },
    });
    this.#surveys.set(survey, session);
    this.#underway.set(request.pad, session);
    this.#ports.quiet(true);
    logStart(recorder.value, pad, startMicros);
    const { stored } = pad.source;
    if (stored !== undefined) recorder.value.mark(startMicros, 'layers', { layers: stored() });
    session.begin();
    // A pad that left while its log was opened tells nobody any more.
    if (pad.state === 'lost') await session.end('failed', pad.health().problem);
    return done(session.state);
  }
}

function headerOf(request: Request<'survey.start'>, pad: PadSession, { version, clock }: DeskPorts): LogHeader {
  const { identity, domain, profile, descriptor } = pad.details;
  return {
    kind: 'stickwright-report-log',
    version: 1,
    program: version,
    startedAt: clock.now().toISOString(),
    stage: request.stage,
    domain,
    pad: { ...identity, unit: pad.unit },
    descriptor,
    profile,
    endMark: true,
  };
}

/** What started the pad was sent before the log began: it stands at its beginning, with how long before that was. */
function logStart(recorder: Recorder, { sent }: PadSession, startMicros: number): void {
  if (sent.length === 0) return;
  for (const { reportId, payload } of sent) recorder.sent(startMicros, reportId, payload);
  recorder.mark(startMicros, 'sentBefore', { us: sent.map(({ atMicros }) => startMicros - atMicros) });
}

/** A pad that no other program can meet needs no lock. */
function nothingToFree(): Promise<void> {
  return Promise.resolve();
}
