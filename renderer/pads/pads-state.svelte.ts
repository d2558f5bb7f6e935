/** The pads that are there, the one in hand with its health, and its live readings. Owns state, renders nothing. */
import { createContext } from 'svelte';
import { ownerOf, type PadOwner } from '../../core/pad/owner.ts';
import type { Problem, Result } from '../../core/result.ts';
import type { PadLayout } from '../../core/pad/layout.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { EventPayload, Request } from '../../shared/contract.ts';
import { readBatchPad, readSampleBatch } from '../../shared/sample-batch.ts';
import type { LiveReadings } from './live-readings.ts';
import { nameOf, ofSummary, padName, type PadName } from './pad-name.ts';
import type { PadDetails, PadHealth, PadSummary } from './pad-words.ts';

export type HandMovement = Request<'demo.hand'>['does'];
export type OpenLive = (details: PadDetails) => Result<LiveReadings>;
type Hand = EventPayload<'hand.changed'>;

const EMPTY: Hand = { pad: null, unit: null, gone: false, does: {}, problem: null };

export class PadsState {
  list = $state.raw<readonly PadSummary[]>([]);
  demos = $state.raw<readonly { readonly name: string; readonly says: string }[]>([]);
  /** What is in hand, as the bench tells every page. */
  hand = $state.raw<Hand>(EMPTY);
  health = $state.raw<PadHealth | null>(null);
  /** Plain object with typed rings; replaced when another pad is in hand, or the same one returned. */
  live = $state.raw<LiveReadings | null>(null);
  /** How the pad in hand is read; may settle only once its reports have come. */
  layout = $state.raw<PadLayout | null>(null);
  problem = $state.raw<Problem | null>(null);
  /** Handle of the pad that is being taken in hand here, or null. */
  opening = $state<string | null>(null);
  readonly #bench: BenchApi;
  readonly #openLive: OpenLive;

  constructor(bench: BenchApi, openLive: OpenLive) {
    this.#bench = bench;
    this.#openLive = openLive;
  }

  /** Lists the pads and follows them and the one in hand. Returns the function that ends it. */
  async follow(nowMillis: () => number): Promise<() => void> {
    const ends = [
      this.#bench.listen('pads.changed', (list) => (this.list = list)),
      this.#bench.listen('hand.changed', (hand) => this.#hold(hand)),
      this.#bench.listen('pad.health', (health) => {
        if (health.pad === this.inHand?.pad) this.health = health;
      }),
      this.#bench.samples((batch) => this.#heard(batch, nowMillis())),
    ];
    const [list, demos, hand] = await Promise.all([
      this.#bench.call('pads.list', {}),
      this.#bench.call('pads.demos', {}),
      this.#bench.call('pads.inHand', {}),
    ]);
    if (demos.ok) this.demos = demos.value;
    if (list.ok) this.list = list.value;
    else this.problem = list.problem;
    if (hand.ok) this.#hold(hand.value);
    else this.problem = hand.problem;
    return () => {
      for (const end of ends) end();
    };
  }

  /** The pad in hand, or null. */
  get inHand(): PadDetails | null {
    return this.hand.pad;
  }

  /** It left and is in hand again once it returns. */
  get gone(): boolean {
    return this.hand.gone;
  }

  /** What tells the pad in hand from others, or null without one. */
  get owner(): PadOwner | null {
    return this.inHand === null ? null : ownerOf(this.inHand.identity, this.hand.unit);
  }

  /** The pad in hand as it is called in its list, or null without one. */
  get name(): PadName | null {
    if (this.inHand === null) return null;
    return nameOf(this.list, this.inHand.pad) ?? padName(ofSummary({ ...this.inHand, unit: this.hand.unit }));
  }

  get simulated(): boolean {
    return this.inHand?.identity.transport === 'simulated';
  }

  /** What the demonstration hand of the pad in hand was told last. */
  movementOf(stick: StickId): HandMovement {
    return this.hand.does[stick] ?? 'rest';
  }

  /** The demonstration hand does what a survey asks for. */
  get follows(): boolean {
    return STICKS.some((stick) => this.movementOf(stick) === 'follow');
  }

  /** Takes a pad in hand, on every page; the one held before is closed. */
  async take(pad: string): Promise<void> {
    if ((this.inHand?.pad === pad && !this.gone) || this.opening !== null) return;
    this.opening = pad;
    const reply = await this.#bench.call('pads.take', { pad });
    this.opening = null;
    this.#settle(reply);
    if (reply.ok) this.#hold(reply.value);
  }

  async plugDemo(name: string): Promise<void> {
    const reply = await this.#bench.call('pads.plugDemo', { name });
    this.#settle(reply);
    if (reply.ok) await this.take(reply.value.pad);
  }

  /** Pulls or puts in the cable of a simulated pad, or takes the pad out of the list for good. */
  async cable(pad: string, does: 'unplug' | 'plugIn' | 'takeAway'): Promise<void> {
    this.#settle(await this.#bench.call(`demo.${does}`, { pad }));
  }

  async moveHand(stick: StickId, does: HandMovement): Promise<void> {
    const pad = this.inHand?.pad;
    if (pad === undefined) return;
    this.#settle(await this.#bench.call('demo.hand', { pad, stick, does }));
  }

  /** Has the hand of a simulated pad do what a survey asks for with every stick, or lets go of them. */
  async followSurvey(follows: boolean): Promise<void> {
    for (const stick of STICKS)
      if (this.layout?.sticks[stick] !== undefined) await this.moveHand(stick, follows ? 'follow' : 'rest');
  }

  #hold(hand: Hand): void {
    const before = this.hand;
    this.hand = hand;
    const isNew = hand.pad?.pad !== before.pad?.pad || (before.gone && !hand.gone);
    if (!isNew) return;
    const live = hand.pad === null ? null : this.#openLive(hand.pad);
    if (live?.ok === false) this.problem = live.problem;
    this.health = null;
    this.live = live?.ok === true ? live.value : null;
    this.layout = this.live?.layout ?? null;
  }

  #heard(batch: Uint8Array, nowMillis: number): void {
    const live = this.live;
    if (live === null || readBatchPad(batch) !== this.inHand?.pad) return;
    live.arrivedMillis = nowMillis;
    const read = readSampleBatch(batch, live);
    if (!read.ok) live.problem = read.problem;
    this.layout = live.layout;
  }

  #settle(reply: Result<unknown>): void {
    this.problem = reply.ok ? null : reply.problem;
  }
}

/** Handed down once by the app. */
export const [usePads, providePads] = createContext<PadsState>();
