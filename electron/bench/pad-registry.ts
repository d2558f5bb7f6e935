/** Which pads there are, real and simulated, each under a handle that says nothing of the machine. */
import { kinshipOf, ownerOf, type PadOwner } from '../../core/pad/owner.ts';
import { failed, type Result } from '../../core/result.ts';
import type { Reply } from '../../shared/contract.ts';
import type { Clock } from './clock.ts';
import type { PadSource, PadWatcher, PlugDemo } from './pad-source.ts';

export type PadSummary = Reply<'pads.list'>[number];

/** Plugged in by itself while there is no real pad. */
const FIRST_DEMO = 'healthy';
/** A list that takes longer is not waited for. */
const FIRST_LOOK_MILLIS = 1_000;
/** More would only be a mistake. */
const MOST_DEMOS = 16;

/** What is known of the pads that are open. */
export interface OpenPads {
  isOpen(pad: string): boolean;
  unitOf(pad: string): string | null;
}

export class PadRegistry {
  readonly #plugDemo: PlugDemo;
  readonly #open: OpenPads;
  readonly #changed: () => void;
  /** Handle of every key met in this run: a pad that comes back is the same pad. */
  readonly #handles = new Map<string, string>();
  readonly #demos = new Map<string, PadSource>();
  #real: readonly PadSource[] = [];
  #first: PadSource | null = null;

  constructor(plugDemo: PlugDemo, open: OpenPads, changed: () => void) {
    this.#plugDemo = plugDemo;
    this.#open = open;
    this.#changed = changed;
  }

  /** Takes the pads that the watcher tells; without one, or while it finds nothing out, there are simulated pads alone. */
  watch(watcher: PadWatcher | null, clock: Clock): void {
    if (watcher === null) {
      this.#take([]);
      return;
    }
    const cancel = clock.after(FIRST_LOOK_MILLIS, () => this.#take([]));
    watcher.start((pads) => {
      cancel();
      this.#take(pads);
    });
  }

  list(): readonly PadSummary[] {
    return this.#sources().map((source) => this.#summary(source));
  }

  find(pad: string): Result<PadSource> {
    const source = this.#sources().find((one) => this.#handleOf(one) === pad);
    if (source !== undefined) return { ok: true, value: source };
    return failed('pad-gone', 'This pad is no longer there; plug it in again and choose it from the list.');
  }

  /** The handle of the pad that is there and is this one, or the only one that it can be; null where none is, or several can be. */
  padOf(owner: PadOwner): string | null {
    const like = this.#sources().map((source) => {
      const pad = this.#handleOf(source);
      return { pad, kinship: kinshipOf(owner, ownerOf(source.transport.identity, this.#open.unitOf(pad))) };
    });
    const same = like.find(({ kinship }) => kinship === 'same');
    const possible = like.filter(({ kinship }) => kinship === 'unknown');
    return same?.pad ?? (possible.length === 1 ? (possible[0]?.pad ?? null) : null);
  }

  plug(name: string): Result<PadSummary> {
    if (this.#demos.size >= MOST_DEMOS)
      return failed('demo-too-many', `There are ${MOST_DEMOS} simulated pads already; use one of them.`);
    const plugged = this.#plugDemo(name, `demo-${this.#demos.size + 1}`);
    if (!plugged.ok) return plugged;
    this.#demos.set(plugged.value.transport.key, plugged.value);
    this.#changed();
    return { ok: true, value: this.#summary(plugged.value) };
  }

  #take(pads: readonly PadSource[]): void {
    this.#real = pads;
    if (pads.length === 0 && this.#first === null) {
      const plugged = this.#plugDemo(FIRST_DEMO, 'demo-0');
      this.#first = plugged.ok ? plugged.value : null;
    } else if (pads.length > 0 && this.#first !== null && !this.#open.isOpen(this.#handleOf(this.#first)))
      this.#first = null;
    this.#changed();
  }

  #sources(): readonly PadSource[] {
    return [...this.#real, ...(this.#first === null ? [] : [this.#first]), ...this.#demos.values()];
  }

  #summary(source: PadSource): PadSummary {
    const pad = this.#handleOf(source);
    const { transport, problem, rule } = source;
    const unit = this.#open.unitOf(pad);
    return { pad, identity: transport.identity, open: this.#open.isOpen(pad), problem, rule, unit };
  }

  #handleOf(source: PadSource): string {
    const { key } = source.transport;
    const known = this.#handles.get(key) ?? `pad-${this.#handles.size + 1}`;
    this.#handles.set(key, known);
    return known;
  }
}
