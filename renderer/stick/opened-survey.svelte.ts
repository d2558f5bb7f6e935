/** The survey on the bench: opened once for every view. Owns state, renders nothing. */
import type { Problem } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Reply } from '../../shared/contract.ts';

export type SurveyDetails = Reply<'surveys.open'>;

export class OpenedSurvey {
  readonly #bench: BenchApi;
  #asked = 0;
  #wanted: string | null = null;
  #details = $state.raw<SurveyDetails | null>(null);
  #problem = $state.raw<Problem | null>(null);
  #loading = $state(false);

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  get details(): SurveyDetails | null {
    return this.#details;
  }

  /** Why the survey could not be opened, or null. */
  get problem(): Problem | null {
    return this.#problem;
  }

  get loading(): boolean {
    return this.#loading;
  }

  /** Opens it again whenever it is judged by other terms, whoever chose them. Returns the function that ends it. */
  follow(): () => void {
    return this.#bench.listen('survey.judged', ({ survey }) => {
      if (survey === this.#wanted) void this.open(survey);
    });
  }

  /**
   * Opens a survey, or puts the old one away; the newest call wins, whichever answer comes last. The same one again, because it
   * has ended or is judged by other limits, stands until the new answer is there.
   */
  async open(survey: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    this.#wanted = survey;
    // Numbers of one survey must never stand under the name of another, not even while it is read.
    if (survey !== this.#details?.survey) this.#details = null;
    this.#problem = null;
    this.#loading = survey !== null;
    if (survey === null) return;
    const reply = await this.#bench.call('surveys.open', { survey });
    if (asked !== this.#asked) return;
    this.#loading = false;
    this.#details = reply.ok ? reply.value : null;
    this.#problem = reply.ok ? null : reply.problem;
  }
}
