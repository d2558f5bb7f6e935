/**
 * The Workbench: one survey's evidence, the proposal for each of its sticks and the zone asked about, and from them what
 * every view compares. Owns state, renders nothing. A change of mapping or zone recomputes only what depends on it.
 */
import type { StickEvidence } from '../../../core/capture/evidence.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import type { Problem, Result } from '../../../core/result.ts';
import { compileChain } from '../../../core/zones/run-chain.ts';
import type { Chain } from '../../../core/zones/chain.ts';
import type { Finding } from '../../../core/findings/finding.ts';
import type { BenchApi } from '../../../shared/bench-api.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import { findByKey, findingsOf } from '../../findings/finding-key.ts';
import { judgedInBrief } from '../../findings/judged-stick.ts';
import { judgedNote } from '../../findings/judged-note.svelte.ts';
import { planeInput, profileInput, railsInput, rimPoint } from './figure-inputs.ts';
import type { HistoryStore } from '../../stick/kept-history.ts';
import { ledgerRows } from './ledger.ts';
import { MappingDesk } from '../../stick/mapping-desk.svelte.ts';
import { missingSentences } from './missing.ts';
import { AgainstState } from '../../stick/against-state.svelte.ts';
import { handLimits } from '../../stick/hand-limits.ts';
import { SampleState } from '../../stick/sample-state.svelte.ts';
import { responseSeries, type ResponseSeries } from './response-series.ts';
import { measureUnder, withZones, type Candidate, type Standing } from '../../stick/standing.ts';
import { chainOf, type Zone } from '../../stick/zone.ts';

export type SurveyDetails = Reply<'surveys.open'>;
export type ProposalReply = Reply<'surveys.propose'>;
export type Wish = Request<'surveys.propose'>['wish'];

/** What the Workbench reads from the rest of the app. */
export interface WorkbenchSources {
  readonly bench: BenchApi;
  stick(): StickId;
  /** The selected direction, or null. */
  direction(): number | null;
  select(direction: number): void;
  /** Key of the finding whose evidence is marked, or null. */
  finding(): string | null;
  /** The zone as the settings hold it; null until they are read. */
  zone(): Zone | null;
  /** The chain as the settings hold it; null where it is the one zone. */
  chain(): Chain | null;
  /** Where "yours" is kept for as long as the window stands. */
  readonly store: HistoryStore;
}

/** The guard that the trade's sheets leave unless a hand sets another: DESIGN, Proposal. */
const USUAL_WISH: Wish = { aim: 'full-reach', centreBy: 'steadiest', guard: 0.01 };
const USUAL_ZONE: Zone = { shape: 'radial', inner: 0.08, outer: 1 };

export class WorkbenchState {
  readonly #from: WorkbenchSources;
  #asked = 0;
  #wished = 0;
  #details = $state.raw<SurveyDetails | null>(null);
  #problem = $state.raw<Problem | null>(null);
  #loading = $state(false);
  #proposals = $state.raw<Partial<Record<StickId, Result<ProposalReply>>>>({});
  /** Sticks whose proposal is still being computed. */
  #awaited = $state.raw<readonly StickId[]>([]);
  #wish = $state.raw<Wish>(USUAL_WISH);
  #ownZone = $state.raw<Zone | null>(null);
  /** Until the settings have it: undefined where they have the last word. */
  #ownChain = $state.raw<Chain | null | undefined>(undefined);
  #pointed = $state<number | null>(null);

  readonly evidence: StickEvidence | null = $derived.by(() => this.#stick?.evidence ?? null);
  readonly zone: Zone = $derived.by(() => this.#ownZone ?? this.#from.zone() ?? USUAL_ZONE);
  readonly #stick = $derived.by(() => this.#details?.sticks[this.#from.stick()] ?? null);
  readonly #handLimits = $derived.by(() =>
    this.evidence === null ? null : handLimits(this.evidence.fields, this.domain),
  );
  readonly #candidates: readonly Candidate[] = $derived.by(() => {
    const now: StickMapping | null = this.#stick?.current ?? null;
    const proposed = this.proposal?.mapping ?? null;
    return [
      ...(now === null ? [] : [{ tone: 'now', mapping: now } as const]),
      ...(proposed === null ? [] : [{ tone: 'proposed', mapping: proposed } as const]),
    ];
  });
  readonly #measured = $derived.by(() => {
    const evidence = this.evidence;
    return evidence === null ? [] : this.#candidates.map((candidate) => measureUnder(evidence, candidate));
  });
  readonly #ownMeasured = $derived.by(() => {
    const { evidence } = this;
    const { own } = this.desk;
    return evidence === null || own === null ? null : measureUnder(evidence, { tone: 'yours', mapping: own });
  });
  /** More than one zone asked about; null where it is the one zone. */
  readonly ownChain: Chain | null = $derived.by(() =>
    this.#ownChain === undefined ? this.#from.chain() : this.#ownChain,
  );
  /** What every signal of the stick is asked through. */
  readonly chain: Chain = $derived.by(() => this.ownChain ?? chainOf(this.zone));
  readonly #run = $derived.by(() => compileChain(this.chain));
  readonly #given: readonly Standing[] = $derived.by(() =>
    this.#measured.map((measured) => withZones(measured, this.chain)),
  );
  /** Apart from the others, so that a nudge computes nothing of them again. */
  readonly #own: Standing | null = $derived.by(() => {
    const measured = this.#ownMeasured;
    return measured === null ? null : withZones(measured, this.chain);
  });
  /** `now`, `proposed` where there is a proposal, `yours` where a hand made one; empty without evidence. */
  readonly standings: readonly Standing[] = $derived.by(() =>
    this.#own === null ? this.#given : [...this.#given, this.#own],
  );
  /** The standings, and last the other survey's own where one is compared with. */
  readonly compared: readonly Standing[] = $derived.by(() =>
    this.against.standing === null ? this.standings : [...this.standings, this.against.standing],
  );
  readonly missing = $derived.by(() => (this.evidence === null ? [] : missingSentences(this.evidence)));
  readonly ledger = $derived.by(() => ledgerRows(this.standings, this.domain));
  readonly profile = $derived.by(() => (this.evidence === null ? null : profileInput(this.compared, this.domain)));
  readonly plane = $derived.by(() =>
    this.evidence === null
      ? null
      : planeInput(this.evidence, this.compared, this.ownChain ?? this.zone, this.against.evidence),
  );
  readonly rails = $derived.by(() => (this.evidence === null ? null : railsInput(this.evidence, this.standings)));
  /** The finding whose evidence is marked, or null. */
  readonly finding: Finding | null = $derived.by(() => {
    const findings = this.#details?.report.findings ?? [];
    return findByKey(findingsOf(findings, this.#from.stick()), this.#from.finding());
  });
  /** What every view shows: the direction pointed at, else the selected one. */
  readonly direction: number | null = $derived.by(() => this.#pointed ?? this.#from.direction());
  /** Whether the reach of the shown direction stands at a limit of its field, and so is only "at least" known. */
  readonly isAtLeast: boolean = $derived.by(() => this.profile?.atLeast[(this.direction ?? 0) / 5] ?? false);
  /** Rim point of the shown direction in counts as reported, or null. */
  readonly rimPoint = $derived.by(() =>
    this.evidence === null || this.direction === null ? null : rimPoint(this.evidence, this.standings, this.direction),
  );
  readonly response: readonly ResponseSeries[] = $derived.by(() => {
    const { evidence, rimPoint: rim } = this;
    const rest = this.standings[0]?.rest?.point;
    if (evidence === null || rim === null || rest === undefined) return [];
    const along = { fields: evidence.fields, rest, rim, run: this.#run };
    return this.standings.map((standing) => responseSeries(standing, along));
  });

  /** The mapping a hand makes of the proposed one. */
  readonly desk: MappingDesk;
  /** The survey that the shown one is compared with. */
  readonly against: AgainstState;
  /** The sample that is selected. */
  readonly sample: SampleState;

  constructor(from: WorkbenchSources) {
    this.#from = from;
    this.desk = new MappingDesk({
      survey: () => this.#details?.survey ?? null,
      stick: () => from.stick(),
      limits: () => this.#handLimits,
      now: () => this.#stick?.current ?? null,
      proposed: () => this.proposal?.mapping ?? null,
      store: from.store,
    });
    this.sample = new SampleState(from.bench);
    this.against = new AgainstState({
      bench: from.bench,
      stick: () => from.stick(),
      chain: () => this.chain,
      shown: () => this.#details,
    });
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

  get domain(): SurveyDetails['log']['domain'] {
    return this.#details?.log.domain ?? 'reported';
  }

  get wish(): Wish {
    return this.#wish;
  }

  /** Whether the proposal of the shown stick is still being computed. */
  get proposing(): boolean {
    return this.#awaited.includes(this.#from.stick());
  }

  get proposal(): ProposalReply | null {
    const reply = this.#proposals[this.#from.stick()];
    return reply?.ok === true ? reply.value : null;
  }

  /** Why there is no proposal for the stick, or null. */
  get proposalProblem(): Problem | null {
    const reply = this.#proposals[this.#from.stick()];
    return reply?.ok === false ? reply.problem : null;
  }

  /** The proposed mapping of every stick that has one. */
  get proposedMappings(): Partial<Record<StickId, StickMapping>> {
    const mappings: Partial<Record<StickId, StickMapping>> = {};
    for (const stick of STICKS) {
      const reply = this.#proposals[stick];
      if (reply?.ok === true) mappings[stick] = reply.value.mapping;
    }
    return mappings;
  }

  /** Opens a survey, or puts the old one away. The newest call wins, whichever answer comes last. */
  async open(survey: string | null): Promise<void> {
    const asked = (this.#asked += 1);
    // Numbers of one survey must never stand under the name of another, not even while it is read.
    if (survey !== this.#details?.survey) this.#putAway();
    if (survey === null) return;
    this.#loading = true;
    const reply = await this.#from.bench.call('surveys.open', { survey });
    if (asked !== this.#asked) return;
    this.#putAway();
    this.#details = reply.ok ? reply.value : null;
    this.#problem = reply.ok ? null : reply.problem;
    if (!reply.ok) return;
    judgedNote.keep(survey, judgedInBrief(reply.value.report));
    // The weakest direction is what a bench asks about first.
    if (this.#from.direction() === null) this.#from.select(this.standings[0]?.rim?.leastReach?.angle ?? 0);
    await this.#propose();
  }

  /** Asks for another proposal. What is not named stays. */
  async askFor(part: Partial<Wish>): Promise<void> {
    this.#wish = { ...this.#wish, ...part };
    if (this.#details !== null) await this.#propose();
  }

  /** Another chain; null for the one zone again. */
  setChain(chain: Chain | null): void {
    this.#ownChain = chain;
  }

  setZone(part: Partial<Zone>): void {
    this.#ownZone = { ...this.zone, ...part };
  }

  /** The direction pointed at without being selected, or null. */
  get pointed(): number | null {
    return this.#pointed;
  }

  /** Points at a direction without selecting it; null points away. */
  point(direction: number | null): void {
    this.#pointed = direction;
  }

  #putAway(): void {
    this.#details = null;
    this.#problem = null;
    this.#proposals = {};
    this.#loading = false;
    this.#awaited = [];
    this.#wished += 1;
  }

  /** One stick after the other, the shown one first: the bench computes one at a time. */
  async #propose(): Promise<void> {
    const details = this.#details;
    if (details === null) return;
    const wished = (this.#wished += 1);
    const shown = this.#from.stick();
    const sticks = STICKS.filter((stick) => details.sticks[stick] !== undefined);
    this.#awaited = sticks.toSorted((a, b) => Number(b === shown) - Number(a === shown));
    for (const stick of this.#awaited) {
      const request = { survey: details.survey, stick, wish: this.#wish };
      const reply = await this.#from.bench.call('surveys.propose', request);
      if (wished !== this.#wished) return;
      this.#proposals = { ...this.#proposals, [stick]: reply };
      this.#awaited = this.#awaited.filter((other) => other !== stick);
    }
  }
}
