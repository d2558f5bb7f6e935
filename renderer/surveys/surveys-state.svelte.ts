/** Finished and imported surveys, and the one that runs. Owns state, renders nothing. */
import { createContext } from 'svelte';
import type { Problem, Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Request } from '../../shared/contract.ts';
import { failed } from '../../core/result.ts';
import { fromBase64, piecesOf } from '../kit/page/file-pieces.ts';
import { isRunning, type SurveyRunState, type SurveySummary } from './survey-words.ts';

export type SurveyPlan = Request<'survey.start'>;
export type SurveyWord = Request<'survey.say'>['what'];

export class SurveysState {
  list = $state.raw<readonly SurveySummary[]>([]);
  /** The survey that runs or has just ended; null once it is put away. */
  run = $state.raw<SurveyRunState | null>(null);
  problem = $state.raw<Problem | null>(null);
  /** Share of a file that has been handed over while one is imported; null otherwise. */
  importing = $state<number | null>(null);
  readonly #bench: BenchApi;

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  /** Lists the surveys and follows them. Returns the function that ends it. */
  async follow(): Promise<() => void> {
    const ends = [
      this.#bench.listen('surveys.changed', (list) => {
        this.list = list;
      }),
      this.#bench.listen('survey.state', (state) => {
        // States of a survey that was put away may still be on their way.
        if (this.run === null ? isRunning(state) : this.run.survey === state.survey) this.run = state;
      }),
    ];
    const reply = await this.#bench.call('surveys.list', {});
    if (reply.ok) this.list = reply.value;
    else this.problem = reply.problem;
    const underway = await this.#bench.call('surveys.underway', {});
    if (underway.ok) this.#takeUp(underway.value);
    else this.problem = underway.problem;
    return () => {
      for (const end of ends) end();
    };
  }

  /** What runs is shown whoever began it; one that ended while this page was cut off stands in the list. */
  #takeUp(underway: readonly SurveyRunState[]): void {
    const { run } = this;
    if (run === null || this.running)
      this.run = underway.find(({ survey }) => survey === run?.survey) ?? underway[0] ?? null;
  }

  get running(): boolean {
    return this.run !== null && isRunning(this.run);
  }

  async start(plan: SurveyPlan): Promise<boolean> {
    const reply = await this.#bench.call('survey.start', plan);
    this.#settle(reply);
    if (reply.ok) this.run = reply.value;
    return reply.ok;
  }

  async say(what: SurveyWord): Promise<void> {
    const survey = this.run?.survey;
    if (survey === undefined) return;
    const reply = await this.#bench.call('survey.say', { survey, what });
    this.#settle(reply);
    if (reply.ok && this.run?.survey === survey) this.run = reply.value;
  }

  /** Puts the ended survey away, so that another can be started. */
  putAway(): void {
    if (!this.running) this.run = null;
  }

  /** Hands a report log over in pieces. Answers with its summary, or null where it was refused. */
  async import(file: File): Promise<SurveySummary | null> {
    const upload = crypto.randomUUID();
    this.importing = 0;
    let handed = 0;
    let taken: SurveySummary | null = null;
    for await (const { piece, last } of piecesOf(file)) {
      const reply = await this.#bench.call('surveys.import', { upload, name: file.name.slice(0, 200), piece, last });
      this.#settle(reply);
      if (!reply.ok) break;
      handed += piece.length * 0.75;
      this.importing = file.size === 0 ? 1 : Math.min(1, handed / file.size);
      taken = reply.value.survey;
    }
    this.importing = null;
    return taken;
  }

  /** The whole log of a survey as a file's contents, or null where it could not be read. */
  async export(survey: string): Promise<Blob | null> {
    const pieces: Uint8Array<ArrayBuffer>[] = [];
    let from: number | null = 0;
    while (from !== null) {
      const reply: Result<{ piece: string; next: number | null }> = await this.#bench.call('surveys.export', {
        survey,
        from,
      });
      const bytes = reply.ok ? fromBase64(reply.value.piece) : null;
      if (!reply.ok || bytes === null) {
        this.#settle(reply.ok ? failed('export-broken', 'A piece of the log came damaged; export it again.') : reply);
        return null;
      }
      pieces.push(bytes);
      from = reply.value.next;
    }
    this.problem = null;
    return new Blob(pieces, { type: 'application/x-ndjson' });
  }

  #settle(reply: Result<unknown>): void {
    this.problem = reply.ok ? null : reply.problem;
  }
}

/** Handed down once by the app. */
export const [useSurveys, provideSurveys] = createContext<SurveysState>();
