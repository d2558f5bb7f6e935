/**
 * The one owner of what is known of the sticks on the bench, for the life of the page: the survey, what is wished, proposed and
 * made by hand of it, the chain, and how it all stands. The Workbench draws it, Memory plans it, Findings marks it. What is
 * said of one stick is said of the selected one. Renders nothing.
 */
import { createContext } from 'svelte';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { Finding } from '../../core/findings/finding.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { measuredMapping } from '../../core/mapping/measured-mapping.ts';
import { STICKS, type Domain, type StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import { findByKey, findingsOf } from './finding-key.ts';
import { HostsState, type HostSources } from './hosts-state.svelte.ts';
import { AgainstState } from './against-state.svelte.ts';
import { ChainInForce, type ChainStore } from './chain-in-force.svelte.ts';
import { handLimits } from './hand-limits.ts';
import { MappingEditor } from './mapping-editor.svelte.ts';
import { OpenedSurvey, type SurveyDetails } from './opened-survey.svelte.ts';
import type { Origin } from './origin.ts';
import { Proposals, type Mappings } from './proposals.svelte.ts';
import { OverReload, type ReloadStore } from './over-reload.ts';
import { SampleState } from './sample-state.svelte.ts';
import { ShownDirection } from './shown-direction.svelte.ts';
import type { Standing } from './standing.ts';
import { Standings } from './standings.svelte.ts';

/** What the owner reads from the rest of the app. */
export interface BenchSources {
  readonly bench: BenchApi;
  readonly chain: ChainStore;
  /** The window's, for what outlives a reload. */
  readonly store: ReloadStore;
  stick(): StickId;
  direction(): number | null;
  select(direction: number): void;
  /** Key of the finding whose evidence is marked, or null. */
  finding(): string | null;
  /** The image whose layers hosts read, or null. */
  readonly image: HostSources['image'];
}

const NOTHING_KNOWN: Origin = { pad: null, domain: null };

export class StickOnBench {
  readonly #from: BenchSources;
  readonly survey: OpenedSurvey;
  readonly chain: ChainInForce;
  readonly proposals: Proposals;
  /** The mapping a hand makes of the proposed one. */
  readonly editor: MappingEditor;
  readonly direction: ShownDirection;
  /** The survey that the shown one is compared with. */
  readonly against: AgainstState;
  /** The sample that is selected. */
  readonly sample: SampleState;
  readonly hosts: HostsState;
  readonly #standings: Standings;

  readonly #stick = $derived.by(() => this.details?.sticks[this.#from.stick()] ?? null);
  readonly evidence: StickEvidence | null = $derived.by(() => this.#stick?.evidence ?? null);
  readonly #limits = $derived.by(() => (this.evidence === null ? null : handLimits(this.evidence.fields, this.domain)));
  /** Whose the survey's numbers are. */
  readonly origin: Origin = $derived.by(() =>
    this.details === null ? NOTHING_KNOWN : { pad: this.details.pad, domain: this.details.log.domain },
  );
  /** What the survey measured of each of its sticks. */
  readonly measured: Mappings = $derived.by(() => {
    const measured = STICKS.flatMap((stick) => {
      const evidence = this.details?.sticks[stick]?.evidence;
      const mapping = evidence === undefined ? null : measuredMapping(evidence);
      return mapping === null ? [] : [[stick, mapping] as const];
    });
    return Object.fromEntries(measured);
  });
  /** The standings, and last the other survey's own where one is compared with. */
  readonly compared: readonly Standing[] = $derived.by(() =>
    this.against.standing === null ? this.standings : [...this.standings, this.against.standing],
  );
  /** The finding whose evidence is marked, or null. */
  readonly finding: Finding | null = $derived.by(() =>
    findByKey(findingsOf(this.details?.report.findings ?? [], this.#from.stick()), this.#from.finding()),
  );

  constructor(from: BenchSources) {
    this.#from = from;
    const { bench } = from;
    const stick = (): StickId => from.stick();
    const overReload = new OverReload(from.store);
    const survey = (): SurveyDetails | null => this.details;
    const chain = (): ChainInForce['now'] => this.chain.now;
    this.survey = new OpenedSurvey(bench);
    this.chain = new ChainInForce(from.chain);
    this.proposals = new Proposals({ bench, survey, stick, overReload });
    const now = (): StickMapping | null => this.#stick?.current ?? null;
    const proposed = (): StickMapping | null => this.proposals.shown?.mapping ?? null;
    this.editor = new MappingEditor({
      survey: () => this.details?.survey ?? null,
      stick,
      limits: () => this.#limits,
      now,
      proposed,
      origin: () => this.origin,
      overReload,
    });
    const evidence = (): StickEvidence | null => this.evidence;
    this.#standings = new Standings({ evidence, now, proposed, own: () => this.editor.own, chain });
    this.direction = new ShownDirection({
      evidence,
      domain: () => this.domain,
      standings: () => this.standings,
      selected: () => from.direction(),
      select: (direction) => from.select(direction),
    });
    this.against = new AgainstState({ bench, stick, chain, shown: survey });
    this.sample = new SampleState(bench);
    this.hosts = new HostsState({ stick, survey, image: from.image, chain });
  }

  get details(): SurveyDetails | null {
    return this.survey.details;
  }

  get domain(): Domain {
    return this.details?.log.domain ?? 'reported';
  }

  /** `now`, `proposed` where there is a proposal, `yours` where a hand made one; empty without evidence. */
  get standings(): readonly Standing[] {
    return this.#standings.all;
  }
}

/** Handed down once by the app. */
export const [useStick, provideStick] = createContext<StickOnBench>();
