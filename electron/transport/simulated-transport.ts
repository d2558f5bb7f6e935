/** A simulated pad as a transport: it lives by the clock it is given, a batch of reports every few milliseconds. */
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { SimulatedHand } from '../../core/simulate/simulated-hand.ts';
import { memoryDescriptor, type SimulatedMemory } from '../../core/simulate/simulated-memory.ts';
import type { SimulatedPad } from '../../core/simulate/simulated-pad.ts';
import type { Clock } from '../bench/time/clock.ts';
import type { Transport, TransportListener } from '../bench/pads/transport.ts';

const BATCH_MILLIS = 4;
/** After a longer pause, e.g. the machine's sleep, the pad goes on from now and the time between is a gap. */
const LONGEST_CATCH_UP_MICROS = 2_000_000;

export class SimulatedTransport implements Transport {
  readonly key: string;
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array;
  readonly #pad: SimulatedPad;
  readonly #clock: Clock;
  readonly #memory: SimulatedMemory | null;
  #listener: TransportListener | null = null;
  #cancel: (() => void) | null = null;
  /** What the clock showed when the pad's own time began. */
  #beganMicros = 0;
  #unplugged = false;

  /** A pad without a memory takes no output reports. */
  constructor(key: string, pad: SimulatedPad, clock: Clock, memory: SimulatedMemory | null = null) {
    this.key = key;
    this.identity = pad.identity;
    this.descriptor = memory === null ? pad.descriptor : Uint8Array.from([...pad.descriptor, ...memoryDescriptor]);
    this.#memory = memory;
    this.#pad = pad;
    this.#clock = clock;
  }

  /** The hands on the pad; what they do begins with the next batch. */
  get hand(): SimulatedHand {
    return this.#pad.hand;
  }

  open(listener: TransportListener): Promise<Result<void>> {
    return Promise.resolve(this.#begin(listener));
  }

  sendOutput(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    return Promise.resolve(this.#take(reportId, payload));
  }

  sendFeature(): Promise<Result<void>> {
    return Promise.resolve(
      failed('pad-protocol', 'This simulated pad has no feature reports; use a real pad for them.'),
    );
  }

  readFeature(): Promise<Result<Uint8Array>> {
    return Promise.resolve(
      failed('pad-protocol', 'This simulated pad has no feature reports; use a real pad for them.'),
    );
  }

  close(): Promise<void> {
    this.#stop();
    return Promise.resolve();
  }

  get isPluggedIn(): boolean {
    return !this.#unplugged;
  }

  /** Pulls the cable: the pad is lost as a real one would be, until it is plugged in again. */
  unplug(): void {
    const listener = this.#listener;
    this.#unplugged = true;
    this.#stop();
    listener?.lost(this.#gone().problem);
  }

  plugIn(): void {
    this.#unplugged = false;
  }

  #take(reportId: number, payload: Uint8Array): Result<void> {
    const listener = this.#listener;
    if (this.#memory === null)
      return failed('pad-protocol', 'This simulated pad takes no output reports; use a real pad for them.');
    if (listener === null) return this.#gone();
    const answer = this.#memory.take(reportId, payload);
    if (answer === null) return done(undefined);
    this.#clock.after(answer.afterMicros / 1000, () => {
      if (this.#listener === listener) listener.report(this.#clock.micros(), answer.reportId, answer.payload);
    });
    return done(undefined);
  }

  #begin(listener: TransportListener): Result<void> {
    if (this.#unplugged) return this.#gone();
    if (this.#listener !== null) return failed('pad-busy', `${this.identity.product} is open already; close it first.`);
    this.#listener = listener;
    this.#beganMicros = this.#clock.micros() - this.#pad.nowMicros;
    this.#wait();
    return done(undefined);
  }

  #wait(): void {
    this.#cancel = this.#clock.after(BATCH_MILLIS, () => this.#tick());
  }

  #tick(): void {
    const listener = this.#listener;
    if (listener === null) return;
    const now = this.#clock.micros();
    if (now - this.#beganMicros - this.#pad.nowMicros > LONGEST_CATCH_UP_MICROS) {
      this.#beganMicros = now - this.#pad.nowMicros;
      listener.gap(now, null);
    }
    // Whoever hears a report may close the pad: what was under way of this batch is then not told.
    this.#pad.advance(now - this.#beganMicros, (t, reportId, payload) => {
      if (this.#listener === listener) listener.report(this.#beganMicros + t, reportId, payload);
    });
    if (this.#listener === listener) this.#wait();
  }

  #stop(): void {
    this.#cancel?.();
    this.#cancel = null;
    this.#listener = null;
  }

  #gone(): { readonly ok: false; readonly problem: { readonly code: string; readonly says: string } } {
    return failed('pad-gone', `${this.identity.product} is no longer there; plug it in again.`);
  }
}
