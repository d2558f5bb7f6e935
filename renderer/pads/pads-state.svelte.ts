/** The pads that are there, the one in hand with its health, and its live readings. Owns state, renders nothing. */
import type { Problem, Result } from '../../core/result.ts';
import type { PadLayout } from '../../core/pad/layout.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { Request } from '../../shared/contract.ts';
import { readBatchPad, readSampleBatch } from '../../shared/sample-batch.ts';
import type { LiveReadings } from './live-readings.ts';
import type { PadDetails, PadHealth, PadSummary } from './pad-words.ts';

export type HandMovement = Request<'demo.hand'>['does'];
export type OpenLive = (details: PadDetails) => Result<LiveReadings>;

export class PadsState {
  list = $state.raw<readonly PadSummary[]>([]);
  demos = $state.raw<readonly { readonly name: string; readonly says: string }[]>([]);
  /** The pad in hand, or null. */
  inHand = $state.raw<PadDetails | null>(null);
  health = $state.raw<PadHealth | null>(null);
  /** Plain object with typed rings; replaced when another pad is taken in hand. */
  live = $state.raw<LiveReadings | null>(null);
  /** How the pad in hand is read; may settle only once its reports have come. */
  layout = $state.raw<PadLayout | null>(null);
  problem = $state.raw<Problem | null>(null);
  /** Handle of the pad that is being opened, or null. */
  opening = $state<string | null>(null);
  /** What the demonstration hand of the pad in hand was last told. */
  movement = $state<HandMovement>('rest');
  readonly #bench: BenchApi;
  readonly #openLive: OpenLive;

  constructor(bench: BenchApi, openLive: OpenLive) {
    this.#bench = bench;
    this.#openLive = openLive;
  }

  /** Lists the pads, follows them and takes the first that can be opened in hand. Returns the function that ends it. */
  async follow(nowMillis: () => number): Promise<() => void> {
    const ends = [
      this.#bench.listen('pads.changed', (list) => void this.#listed(list)),
      this.#bench.listen('pad.health', (health) => {
        if (health.pad === this.inHand?.pad) this.health = health;
      }),
      this.#bench.samples((batch) => this.#heard(batch, nowMillis())),
    ];
    const [list, demos] = await Promise.all([this.#bench.call('pads.list', {}), this.#bench.call('pads.demos', {})]);
    if (demos.ok) this.demos = demos.value;
    if (list.ok) await this.#listed(list.value);
    else this.problem = list.problem;
    return () => {
      for (const end of ends) end();
    };
  }

  /** What is said of the pad in hand in the list, or null. */
  get summary(): PadSummary | null {
    return this.list.find((pad) => pad.pad === this.inHand?.pad) ?? null;
  }

  get simulated(): boolean {
    return this.inHand?.identity.transport === 'simulated';
  }

  /** Takes a pad in hand; the one held before is closed. */
  async take(pad: string): Promise<void> {
    const before = this.inHand?.pad ?? null;
    if (before === pad || this.opening !== null) return;
    this.opening = pad;
    const reply = await this.#bench.call('pads.open', { pad });
    this.opening = null;
    this.#settle(reply.ok ? this.#hold(reply.value) : reply);
    if (reply.ok && before !== null) this.#settle(await this.#bench.call('pads.close', { pad: before }));
  }

  async plugDemo(name: string): Promise<void> {
    const reply = await this.#bench.call('pads.plugDemo', { name });
    this.#settle(reply);
    if (reply.ok) await this.take(reply.value.pad);
  }

  async moveHand(stick: StickId, does: HandMovement): Promise<void> {
    const pad = this.inHand?.pad;
    if (pad === undefined) return;
    const reply = await this.#bench.call('demo.hand', { pad, stick, does });
    if (reply.ok) this.movement = does;
    this.#settle(reply);
  }

  /** Has the hand of a simulated pad do what a survey asks for with every stick, or lets go of them. */
  async followSurvey(follows: boolean): Promise<void> {
    for (const stick of STICKS)
      if (this.layout?.sticks[stick] !== undefined) await this.moveHand(stick, follows ? 'follow' : 'rest');
  }

  async #listed(list: readonly PadSummary[]): Promise<void> {
    this.list = list;
    const held = this.inHand;
    if (held !== null && list.some((pad) => pad.pad === held.pad)) return;
    // A pad that went away stays in hand, silent, until another takes its place: its last readings are still worth seeing.
    const next = list.find((pad) => pad.problem === null && pad.identity.transport !== 'simulated');
    const open = next ?? list.find((pad) => pad.problem === null);
    if (open !== undefined && (held === null || open.identity.transport !== 'simulated')) await this.take(open.pad);
  }

  #hold(details: PadDetails): Result<unknown> {
    const live = this.#openLive(details);
    this.inHand = details;
    this.health = null;
    this.movement = 'rest';
    this.live = live.ok ? live.value : null;
    this.layout = this.live?.layout ?? null;
    return live;
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
