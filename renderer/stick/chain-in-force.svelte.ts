/** The chain that every signal of the stick is asked through: the settings keep it, a hand changes it. Renders nothing. */
import type { Chain } from '../../core/zones/chain.ts';
import { chainOf, hasOuter, stageOf, zoneName, zoneOfStage, type Zone } from '../../core/zones/one-zone.ts';
import { ChainEditor } from './chain-editor.svelte.ts';

/** Where the chain is kept. */
export interface ChainStore {
  /** Null until it is read. */
  chain(): Chain | null;
  keep(chain: Chain): Promise<void>;
}

/** The plain zone that the quick controls change, and its place in the chain. */
export interface QuickZone {
  readonly place: number;
  readonly zone: Zone;
}

const USUAL = chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 1 });

export class ChainInForce {
  readonly #store: ChainStore;
  /** What the store does not have yet; null where it has the last word. */
  #draft = $state.raw<Chain | null>(null);
  #kept = 0;
  #last: Chain = USUAL;
  /** The chain before the quick controls were touched. */
  #before: Chain | null = null;
  /** A cut has no outer edge; one that stood before comes back with the shape. */
  #outer = 1;

  /** The same object for as long as it says the same: all that is computed through it hangs on that. */
  readonly now: Chain = $derived.by(() => {
    const next = this.#draft ?? this.#store.chain() ?? USUAL;
    if (JSON.stringify(next) !== JSON.stringify(this.#last)) this.#last = next;
    return this.#last;
  });
  /** The first plain zone of the chain; null where it has none. */
  readonly quick: QuickZone | null = $derived.by(() => {
    for (const [place, stage] of this.now.stages.entries()) {
      const zone = zoneOfStage(stage);
      if (zone !== null) return { place, zone };
    }
    return null;
  });
  /** The chain under a hand, with undo. */
  readonly editor: ChainEditor;

  constructor(store: ChainStore) {
    this.#store = store;
    this.editor = new ChainEditor({ chain: () => this.now, take: (chain: Chain) => void this.#keep(chain) });
  }

  /** Changes the zone of the quick controls; it is kept when the hand is done: `settle`. */
  setZone(part: Partial<Zone>): void {
    const { now, quick } = this;
    if (quick === null) return;
    const outer = hasOuter(quick.zone) ? quick.zone.outer : this.#outer;
    const zone = { ...quick.zone, outer, ...part };
    this.#outer = zone.outer;
    this.#before ??= now;
    // A chain that is called after its zone is called after the new one.
    const name = now.name === zoneName(quick.zone) ? zoneName(zone) : now.name;
    this.#draft = { ...now, name, stages: now.stages.with(quick.place, stageOf(zone)) };
  }

  /** The outer edge that a change of shape would bring back. */
  get outer(): number {
    return this.quick !== null && hasOuter(this.quick.zone) ? this.quick.zone.outer : this.#outer;
  }

  /** Keeps what the quick controls made, as one step that the chain's own undo takes back. */
  settle(): void {
    const [before, draft] = [this.#before, this.#draft];
    this.#before = null;
    if (before === null || draft === null) return;
    this.editor.remember(before);
    void this.#keep(draft);
  }

  /** One plain zone in place of the chain: its own where it has one. */
  single(): void {
    this.editor.put(chainOf(this.quick?.zone ?? { shape: 'scaledRadial', inner: 0.1, outer: 1 }));
  }

  async #keep(chain: Chain): Promise<void> {
    const kept = (this.#kept += 1);
    this.#before = null;
    this.#draft = chain;
    await this.#store.keep(chain);
    // A refused write is told by the settings, and what they hold stands again.
    if (kept === this.#kept && this.#draft === chain) this.#draft = null;
  }
}
