/** What is asked of the proposal, and the one proposal for each stick of the survey. Owns state, renders nothing. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { Problem, Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Reply } from '../../shared/contract.ts';
import type { SurveyDetails } from './opened-survey.svelte.ts';
import type { OverReload, Wish } from './over-reload.ts';

export type ProposalReply = Reply<'surveys.propose'>;
export type Mappings = Readonly<Partial<Record<StickId, StickMapping>>>;

/** The guard that the trade's sheets leave unless a hand sets another. */
const USUAL_WISH: Wish = { aim: 'full-reach', centreBy: 'steadiest', guard: 0.01 };

export interface ProposalSources {
  readonly bench: BenchApi;
  survey(): SurveyDetails | null;
  stick(): StickId;
  readonly overReload: OverReload;
}

export class Proposals {
  readonly #from: ProposalSources;
  #asked = 0;
  #wishes = $state.raw<Readonly<Record<string, Wish>>>({});
  /** For which details and wish they are: for no others does any of them stand. */
  #made = $state.raw<{ readonly of: SurveyDetails; readonly wish: Wish } | null>(null);
  #replies = $state.raw<Partial<Record<StickId, Result<ProposalReply>>>>({});
  /** Sticks whose proposal is still being computed. */
  #awaited = $state.raw<readonly StickId[]>([]);

  /** Of the survey on the bench; one for both of its sticks. */
  readonly wish: Wish = $derived.by(() => {
    const survey = this.#from.survey()?.survey;
    if (survey === undefined) return USUAL_WISH;
    return this.#wishes[survey] ?? this.#from.overReload.wish(survey) ?? USUAL_WISH;
  });
  readonly #replyOf = $derived.by(() => (this.#made?.of === this.#from.survey() ? this.#replies : {}));
  readonly shown: ProposalReply | null = $derived.by(() => {
    const reply = this.#replyOf[this.#from.stick()];
    return reply?.ok === true ? reply.value : null;
  });
  /** The proposed mapping of every stick that has one. */
  readonly mappings: Mappings = $derived.by(() => {
    const made = STICKS.flatMap((stick) => {
      const reply = this.#replyOf[stick];
      return reply?.ok === true ? [[stick, reply.value.mapping] as const] : [];
    });
    return Object.fromEntries(made);
  });

  constructor(from: ProposalSources) {
    this.#from = from;
  }

  /** Whether some stick's proposal is still being computed: what stands meanwhile answers an earlier wish. */
  get computing(): boolean {
    return this.#awaited.length > 0;
  }

  /** Whether the shown stick's is. */
  get proposing(): boolean {
    return this.#awaited.includes(this.#from.stick());
  }

  /** Why there is no proposal for a stick, or null. */
  problemOf(stick: StickId): Problem | null {
    const reply = this.#replyOf[stick];
    return reply?.ok === false ? reply.problem : null;
  }

  /** Asks for another proposal. What is not named stays. */
  async askFor(part: Partial<Wish>): Promise<void> {
    const survey = this.#from.survey()?.survey;
    if (survey === undefined) return;
    const wish = { ...this.wish, ...part };
    this.#wishes = { ...this.#wishes, [survey]: wish };
    this.#from.overReload.keepWish(survey, wish);
    await this.ensure();
  }

  /**
   * Has a proposal for each stick of the survey on the bench under its wish; asks for nothing that is there or on its way. One
   * stick after the other, the shown one first: the bench computes one at a time.
   */
  async ensure(): Promise<void> {
    const [details, { wish }] = [this.#from.survey(), this];
    if (details === null) return;
    if (this.#made?.of === details && isSame(this.#made.wish, wish)) return;
    const asked = (this.#asked += 1);
    if (this.#made?.of !== details) this.#replies = {};
    this.#made = { of: details, wish };
    const shown = this.#from.stick();
    const sticks = STICKS.filter((stick) => details.sticks[stick] !== undefined);
    this.#awaited = sticks.toSorted((a, b) => Number(b === shown) - Number(a === shown));
    for (const stick of this.#awaited) {
      const reply = await this.#from.bench.call('surveys.propose', { survey: details.survey, stick, wish });
      if (asked !== this.#asked) return;
      this.#replies = { ...this.#replies, [stick]: reply };
      this.#awaited = this.#awaited.filter((other) => other !== stick);
    }
  }
}

function isSame(one: Wish, other: Wish): boolean {
  return one.aim === other.aim && one.centreBy === other.centreBy && one.guard === other.guard;
}
