/** The direction that every view shows: pointed at, else selected. Owns what is pointed at, renders nothing. */
import { directionIndex } from '../../core/geometry/directions.ts';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { rawPoint } from '../../core/mapping/raw-point.ts';
import type { Domain, Pair } from '../../core/pad/stick.ts';
import { isAtLeast } from './at-least.ts';
import type { Standing } from './standing.ts';

export interface DirectionSources {
  evidence(): StickEvidence | null;
  domain(): Domain;
  standings(): readonly Standing[];
  /** The selected direction, or null. */
  selected(): number | null;
  select(direction: number): void;
}

export class ShownDirection {
  readonly #from: DirectionSources;
  #pointed = $state<number | null>(null);

  readonly now: number | null = $derived.by(() => this.#pointed ?? this.#from.selected());
  /** Rim point of the shown direction in counts as reported, or null. */
  readonly rimPoint: Pair | null = $derived.by(() => {
    const evidence = this.#from.evidence();
    return evidence === null || this.now === null ? null : rimPoint(evidence, this.#from.standings(), this.now);
  });
  /** Whether the reach there stands at a limit of its field, and so is only "at least" known. */
  readonly isAtLeast: boolean = $derived.by(() =>
    isAtLeast(this.#from.standings()[0], this.now ?? 0, this.#from.domain()),
  );

  constructor(from: DirectionSources) {
    this.#from = from;
  }

  /** The direction pointed at without being selected, or null. */
  get pointed(): number | null {
    return this.#pointed;
  }

  /** Points at a direction without selecting it; null points away. */
  point(direction: number | null): void {
    this.#pointed = direction;
  }

  /** The weakest direction is what a bench asks about first; one that is selected stays. */
  selectWeakest(): void {
    if (this.#from.selected() === null) this.#from.select(this.#from.standings()[0]?.rim?.leastReach?.angle ?? 0);
  }
}

/** In counts as reported, the rim point of a direction; null where it has none. */
export function rimPoint(evidence: StickEvidence, standings: readonly Standing[], angle: number): Pair | null {
  const direction = standings[0]?.rim?.directions[directionIndex(angle)];
  const about = evidence.rim?.about;
  if (direction === undefined || about === undefined || direction.x === null || direction.y === null) return null;
  return rawPoint(about, evidence.fields, { x: direction.x, y: direction.y });
}
