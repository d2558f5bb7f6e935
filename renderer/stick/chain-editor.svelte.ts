/** A chain under a hand: added to, ordered, switched off, edited; undone without limit. Only good chains come out. */
import type { Chain, Stage } from '../../core/zones/chain.ts';
import { parseChain } from '../../core/zones/parse-chain.ts';
import { failed, type Problem } from '../../core/result.ts';
import type { StageField, StageKind } from './stage-kinds.ts';
import { withField } from './stage-text.ts';

export interface ChainSources {
  /** The chain in force. */
  chain(): Chain;
  take(chain: Chain): void;
}

export class ChainEditor {
  readonly #from: ChainSources;
  #past = $state.raw<readonly Chain[]>([]);
  #future = $state.raw<readonly Chain[]>([]);

  constructor(from: ChainSources) {
    this.#from = from;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Puts a stage behind the one at `after`, or at the end. Answers with its place. */
  add(kind: StageKind, after: number | null): number {
    const { stages } = this.#from.chain();
    const place = after === null ? stages.length : Math.min(after + 1, stages.length);
    this.#change({ stages: stages.toSpliced(place, 0, kind.first) });
    return place;
  }

  remove(index: number): void {
    this.#change({ stages: this.#from.chain().stages.toSpliced(index, 1) });
  }

  /** Moves a stage by `way` places. Answers with its new place. */
  move(index: number, way: -1 | 1): number {
    const { stages } = this.#from.chain();
    const to = index + way;
    const stage = stages[index];
    if (stage === undefined || to < 0 || to >= stages.length) return index;
    this.#change({ stages: stages.toSpliced(index, 1).toSpliced(to, 0, stage) });
    return to;
  }

  switchOff(index: number, off: boolean): void {
    const { stages } = this.#from.chain();
    const stage = stages[index];
    if (stage === undefined) return;
    // Without the key where it is in force, as a chain file is written by hand.
    const next: Stage = off ? { ...stage, off } : withoutOff(stage);
    this.#change({ stages: stages.with(index, next) });
  }

  /** Why what was written cannot stand, or null where it was taken. The last good chain stays. */
  edit(index: number, field: StageField, text: string): Problem | null {
    const chain = this.#from.chain();
    const stage = chain.stages[index];
    if (stage === undefined) return null;
    return this.#offer({ ...chain, stages: chain.stages.with(index, withField(stage, field, text) as Stage) });
  }

  name(name: string): Problem | null {
    return this.#offer({ ...this.#from.chain(), name });
  }

  /** Output that the consumer must see to respond fully; null for none stated. */
  needs(needs: number | null): Problem | null {
    return this.#offer({ ...this.#from.chain(), needs });
  }

  /** A chain file's text, or one pasted; refused by name and place. */
  read(text: string): Problem | null {
    let value: unknown;
    try {
      value = JSON.parse(text);
    } catch {
      return failed('chain-json', 'This is no JSON; paste the whole of a chain file.').problem;
    }
    return this.#offer(value);
  }

  /** Takes a whole chain. */
  put(chain: Chain): void {
    this.#change(chain);
  }

  /** A step that was made elsewhere: the chain before it. */
  remember(before: Chain): void {
    this.#past = [...this.#past, before];
    this.#future = [];
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#future = [...this.#future, this.#from.chain()];
    this.#past = this.#past.slice(0, -1);
    this.#from.take(before);
  }

  redo(): void {
    const next = this.#future.at(-1);
    if (next === undefined) return;
    this.#past = [...this.#past, this.#from.chain()];
    this.#future = this.#future.slice(0, -1);
    this.#from.take(next);
  }

  #offer(value: unknown): Problem | null {
    const read = parseChain(value);
    if (!read.ok) return read.problem;
    this.#change(read.value);
    return null;
  }

  #change(part: Partial<Chain>): void {
    const before = this.#from.chain();
    this.remember(before);
    this.#from.take({ ...before, ...part });
  }
}

function withoutOff(stage: Stage): Stage {
  return Object.fromEntries(Object.entries(stage).filter(([key]) => key !== 'off')) as unknown as Stage;
}
