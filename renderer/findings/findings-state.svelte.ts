/** The report of one survey, as the Findings view shows it. Owns state, renders nothing. */
import type { Problem } from '../../core/result.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import { judgedNote } from './judged-note.svelte.ts';
import { judgedInBrief, judgedSticks, type JudgedStick, type Report } from './judged-stick.ts';

export interface FindingsSources {
  readonly bench: BenchApi;
  stick(): StickId;
}

export class FindingsState {
  readonly #from: FindingsSources;
  #asked = 0;
  #survey = $state<string | null>(null);
  #report = $state.raw<Report | null>(null);
  #problem = $state.raw<Problem | null>(null);
  #loading = $state(false);

  readonly sticks: readonly JudgedStick[] = $derived.by(() =>
    this.#report === null ? [] : judgedSticks(this.#report),
  );
  /** What is shown: the selected stick, or null where the survey holds nothing of it. */
  readonly shown: JudgedStick | null = $derived.by(
    () => this.sticks.find(({ stick }) => stick === this.#from.stick()) ?? null,
  );

  constructor(from: FindingsSources) {
    this.#from = from;
  }

  get report(): Report | null {
    return this.#report;
  }

  get problem(): Problem | null {
    return this.#problem;
  }

  get loading(): boolean {
    return this.#loading;
  }

  /** Opens a survey, or the same one again where limits changed: its old judgement stays until the new one is there. */
  async open(survey: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    if (survey !== this.#survey) this.#report = null;
    this.#survey = survey;
    this.#problem = null;
    this.#loading = survey !== null;
    if (survey === null) return;
    const reply = await this.#from.bench.call('surveys.open', { survey });
    if (asked !== this.#asked) return;
    this.#loading = false;
    this.#report = reply.ok ? reply.value.report : null;
    this.#problem = reply.ok ? null : reply.problem;
    if (reply.ok) judgedNote.keep(survey, judgedInBrief(reply.value.report));
  }
}
