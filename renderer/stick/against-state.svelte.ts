/** The survey that the shown one is compared with: its own evidence under its own mapping. Owns state, renders nothing. */
import { compareSurveys, type SurveyDifference } from '../../core/measure/compare-surveys.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Problem } from '../../core/result.ts';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { Chain } from '../../core/zones/chain.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { SurveyDetails } from './opened-survey.svelte.ts';
import { measureUnder, withZones, type Standing } from './standing.ts';

export interface AgainstSources {
  readonly bench: BenchApi;
  stick(): StickId;
  chain(): Chain;
  /** The survey that is shown. */
  shown(): SurveyDetails | null;
}

export class AgainstState {
  readonly #from: AgainstSources;
  #asked = 0;
  #details = $state.raw<SurveyDetails | null>(null);
  #problem = $state.raw<Problem | null>(null);
  readonly #stick = $derived.by(() => this.#details?.sticks[this.#from.stick()] ?? null);
  readonly #measured = $derived.by(() =>
    this.#stick === null ? null : measureUnder(this.#stick.evidence, { tone: 'before', mapping: this.#stick.current }),
  );
  /** Null without a survey to compare with, or where it holds nothing of the stick. */
  readonly standing: Standing | null = $derived.by(() =>
    this.#measured === null ? null : withZones(this.#measured, this.#from.chain()),
  );
  /** What changed from it to the shown survey; empty where either lacks the stick. */
  readonly differences: readonly SurveyDifference[] = $derived.by(() => {
    const stick = this.#from.stick();
    const [before, after] = [this.#details?.report.sticks[stick], this.#from.shown()?.report.sticks[stick]];
    return before === undefined || after === undefined ? [] : compareSurveys(before, after);
  });

  constructor(from: AgainstSources) {
    this.#from = from;
  }

  get details(): SurveyDetails | null {
    return this.#details;
  }

  get evidence(): StickEvidence | null {
    return this.#stick?.evidence ?? null;
  }

  /** Why the survey cannot be compared with, or null. */
  get problem(): Problem | null {
    if (this.#problem !== null || this.#details === null || this.#stick !== null) return this.#problem;
    return {
      code: 'against-without-stick',
      says: `The other survey holds nothing of the ${this.#from.stick()} stick; choose another, or the other stick.`,
    };
  }

  /** Opens a survey to compare with, or puts the old one away. The newest call wins. */
  async open(survey: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    if (survey !== this.#details?.survey) this.#details = null;
    this.#problem = null;
    if (survey === null) return;
    const reply = await this.#from.bench.call('surveys.open', { survey });
    if (asked !== this.#asked) return;
    this.#details = reply.ok ? reply.value : null;
    this.#problem = reply.ok ? null : reply.problem;
  }
}
