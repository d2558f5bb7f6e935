/** Which pads there are, real and simulated, each under a handle that says nothing of the machine. */
import { kinshipOf, ownerOf, tellingSerial, type PadOwner } from '../../../core/pad/owner.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import type { Clock } from '../time/clock.ts';
import type { PadSource, PadWatcher, PlugDemo } from './pad-source.ts';

export type PadSummary = Reply<'pads.list'>[number];

/** Plugged in by itself while there is no real pad. */
const FIRST_DEMO = 'healthy';
/** A list that takes longer is not waited for. */
const FIRST_LOOK_MILLIS = 1_000;
/** More would only be a mistake. */
const MOST_DEMOS = 16;

/** What is known of the pads that are open, and of the one in hand. */
export interface OpenPads {
  isOpen(pad: string): boolean;
  isInHand(pad: string): boolean;
  unitOf(pad: string): string | null;
}

export class KnownPads {
  readonly #plugDemo: PlugDemo;
  readonly #open: OpenPads;
  readonly #changed: () => void;
  /** Handle of every key met in this run: a pad that comes back is the same pad. */
  readonly #handles = new Map<string, string>();
  /** Handles given so far: none is given twice. */
  #given = 0;
  readonly #demos = new Map<string, PadSource>();
  /** Simulated pads plugged in by hand so far. */
  #plugged = 0;
  #real: readonly PadSource[] = [];
  #first: PadSource | null = null;
  /** The one that was plugged in by itself was taken away: it does not come back. */
  #isFirstOver = false;

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
    const plugged = this.#plugDemo(name, `demo-${this.#plugged + 1}`);
    if (!plugged.ok) return plugged;
    this.#plugged += 1;
    this.#demos.set(plugged.value.transport.key, plugged.value);
    this.#changed();
    return { ok: true, value: this.#summary(plugged.value) };
  }

  /** Pulls or puts in the cable of a simulated pad. */
  cable(pad: string, isPluggedIn: boolean): Result<Reply<'demo.unplug'>> {
    const source = this.find(pad);
    if (!source.ok) return source;
    const { cable } = source.value;
    if (cable === undefined) return notSimulated();
    if (isPluggedIn) cable.plugIn();
    else cable.unplug();
    this.#changed();
    return done({});
  }

  /** Takes a simulated pad out of the list for good. */
  takeAway(pad: string): Result<Reply<'demo.unplug'>> {
    const source = this.find(pad);
    if (!source.ok) return source;
    if (source.value.cable === undefined) return notSimulated();
    if (source.value === this.#first) {
      this.#first = null;
      this.#isFirstOver = true;
    } else this.#demos.delete(source.value.transport.key);
    this.#handles.delete(source.value.transport.key);
    this.#changed();
    return done({});
  }

  /** A pad was lost. One without a serial number cannot be told from its like: what comes in its place has another handle. */
  lost(pad: string): void {
    const source = this.find(pad);
    if (!source.ok || source.value.hand !== null) return;
    const { key, identity } = source.value.transport;
    if (tellingSerial(identity.serial) === null) this.#handles.delete(key);
  }

  #take(pads: readonly PadSource[]): void {
    this.#real = pads;
    if (pads.length === 0 && this.#first === null && !this.#isFirstOver) {
      const plugged = this.#plugDemo(FIRST_DEMO, 'demo-0');
      this.#first = plugged.ok ? plugged.value : null;
    } else if (pads.length > 0 && this.#first !== null && !this.#isHeld(this.#first)) this.#first = null;
    this.#changed();
  }

  #isHeld(source: PadSource): boolean {
    const pad = this.#handleOf(source);
    return this.#open.isOpen(pad) || this.#open.isInHand(pad);
  }

  #sources(): readonly PadSource[] {
    return [...this.#real, ...(this.#first === null ? [] : [this.#first]), ...this.#demos.values()];
  }

  #summary(source: PadSource): PadSummary {
    const pad = this.#handleOf(source);
    const { transport, rule, cable } = source;
    const unit = this.#open.unitOf(pad);
    const problem = cable?.isPluggedIn === false ? unplugged() : source.problem;
    return { pad, identity: transport.identity, open: this.#open.isOpen(pad), problem, rule, unit };
  }

  #handleOf(source: PadSource): string {
    const { key } = source.transport;
    const known = this.#handles.get(key);
    if (known !== undefined) return known;
    this.#given += 1;
    const handle = `pad-${this.#given}`;
    this.#handles.set(key, handle);
    return handle;
  }
}

function unplugged(): Problem {
  return { code: 'pad-gone', says: 'This simulated pad is unplugged; plug it in again.' };
}

export function notSimulated(): ReturnType<typeof failed> {
  return failed('pad-not-simulated', 'Only a simulated pad can be unplugged from here; pull the cable of this one.');
}
