/** What the selected survey says of the pad whose memory is open: measured numbers and proposals. Owns state, renders nothing. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { measuredMapping } from '../../core/mapping/measured-mapping.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { Problem } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Reply, Request } from '../../shared/contract.ts';

type Details = Reply<'surveys.open'>;
type Mappings = Readonly<Partial<Record<StickId, StickMapping>>>;

const USUAL_WISH: Request<'surveys.propose'>['wish'] = { aim: 'full-reach', centreBy: 'steadiest', guard: 0.01 };

export class MemorySurvey {
  details = $state.raw<Details | null>(null);
  problem = $state.raw<Problem | null>(null);
  #proposed = $state.raw<Mappings>({});
  #asked = 0;
  readonly #bench: BenchApi;

  readonly measured: Mappings = $derived.by(() => {
    const sticks = this.details?.sticks ?? {};
    return Object.fromEntries(
      STICKS.flatMap((stick) => {
        const evidence = sticks[stick]?.evidence;
        const mapping = evidence === undefined ? null : measuredMapping(evidence);
        return mapping === null ? [] : [[stick, mapping] as const];
      }),
    );
  });
  /** Why what a survey proposes cannot be stored, or null. */
  readonly whyNot: string | null = $derived.by(() => {
    if (this.details === null) return 'Choose a survey above: its proposal is what would be stored.';
    if (this.details.log.domain === 'reported')
      return 'The survey has reported counts, after the pad’s own mapping: its proposal is for the host alone and never becomes a patch.';
    return null;
  });

  constructor(bench: BenchApi) {
    this.#bench = bench;
  }

  get proposed(): Mappings {
    return this.#proposed;
  }

  /** Opens a survey, or puts the old one away; the newest call wins. */
  async open(survey: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    this.details = null;
    this.problem = null;
    this.#proposed = {};
    if (survey === null) return;
    const reply = await this.#bench.call('surveys.open', { survey });
    if (asked !== this.#asked) return;
    this.problem = reply.ok ? null : reply.problem;
    if (!reply.ok) return;
    this.details = reply.value;
    for (const stick of STICKS) {
      if (reply.value.sticks[stick] === undefined) continue;
      const proposal = await this.#bench.call('surveys.propose', { survey, stick, wish: USUAL_WISH });
      if (asked !== this.#asked) return;
      if (proposal.ok) this.#proposed = { ...this.#proposed, [stick]: proposal.value.mapping };
      else this.problem = proposal.problem;
    }
  }
}
