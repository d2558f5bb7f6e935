/** How the shown stick stands under each mapping that is compared. A change of one computes nothing of the others again. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { Chain } from '../../core/zones/chain.ts';
import { measureUnder, withZones, type Candidate, type Standing } from './standing.ts';

export interface StandingSources {
  evidence(): StickEvidence | null;
  now(): StickMapping | null;
  proposed(): StickMapping | null;
  own(): StickMapping | null;
  chain(): Chain;
}

export class Standings {
  readonly #from: StandingSources;
  readonly #candidates: readonly Candidate[] = $derived.by(() => {
    const [now, proposed] = [this.#from.now(), this.#from.proposed()];
    return [
      ...(now === null ? [] : [{ tone: 'now', mapping: now } as const]),
      ...(proposed === null ? [] : [{ tone: 'proposed', mapping: proposed } as const]),
    ];
  });
  /** Apart from the zones, because moving a zone changes nothing of it. */
  readonly #measured = $derived.by(() => {
    const evidence = this.#from.evidence();
    return evidence === null ? [] : this.#candidates.map((candidate) => measureUnder(evidence, candidate));
  });
  readonly #ownMeasured = $derived.by(() => {
    const [evidence, own] = [this.#from.evidence(), this.#from.own()];
    return evidence === null || own === null ? null : measureUnder(evidence, { tone: 'yours', mapping: own });
  });
  readonly #given: readonly Standing[] = $derived.by(() =>
    this.#measured.map((measured) => withZones(measured, this.#from.chain())),
  );
  /** Apart from the others, so that a nudge computes nothing of them again. */
  readonly #own: Standing | null = $derived.by(() => {
    const measured = this.#ownMeasured;
    return measured === null ? null : withZones(measured, this.#from.chain());
  });
  /** `now`, `proposed` where there is a proposal, `yours` where a hand made one; empty without evidence. */
  readonly all: readonly Standing[] = $derived.by(() =>
    this.#own === null ? this.#given : [...this.#given, this.#own],
  );

  constructor(from: StandingSources) {
    this.#from = from;
  }
}
