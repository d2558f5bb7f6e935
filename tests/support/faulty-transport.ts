/** A pad that answers the start exchange of its profile, until the one step at which it does something wrong. */
import type { PadIdentity } from '../../core/pad/identity.ts';
import type { Profile, StartStep } from '../../core/pad/profile.ts';
import { startSteps } from '../../core/pad/start-steps.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { Transport, TransportListener } from '../../electron/bench/pads/transport.ts';

/** What goes wrong with a step: with its sending, with its reply, or with the pad as a whole. */
export type StepFault = 'refused' | 'unanswered' | 'short' | 'stale' | 'flipped' | 'left before' | 'left after';

export class FaultyTransport implements Transport {
  readonly key = 'faulty';
  readonly identity: PadIdentity;
  readonly descriptor = null;
  readonly #steps: readonly StartStep[];
  readonly #fault: { readonly step: number; readonly does: StepFault } | null;
  #sent = 0;
  #lastReply: Uint8Array | null = null;
  #listener: TransportListener | null = null;

  /** Steps are counted from 0; without a fault every step is answered as the profile wants it. */
  constructor(profile: Profile, fault: { readonly step: number; readonly does: StepFault } | null) {
    const pad = profile.pads[0] ?? { vendorId: 0, productId: 0 };
    this.identity = { ...pad, product: 'Faulty pad', serial: null, transport: 'usb' };
    this.#steps = startSteps(profile, 'usb');
    this.#fault = fault;
  }

  get isOpen(): boolean {
    return this.#listener !== null;
  }

  open(listener: TransportListener): Promise<Result<void>> {
    this.#listener = listener;
    return Promise.resolve(done(undefined));
  }

  sendOutput(): Promise<Result<void>> {
    return Promise.resolve(this.#take());
  }

  sendFeature(): Promise<Result<void>> {
    return Promise.resolve(this.#take());
  }

  readFeature(): Promise<Result<Uint8Array>> {
    return Promise.resolve(done(new Uint8Array(0)));
  }

  close(): Promise<void> {
    this.#listener = null;
    return Promise.resolve();
  }

  #take(): Result<void> {
    const step = this.#steps[this.#sent];
    const does = this.#fault?.step === this.#sent ? this.#fault.does : null;
    this.#sent += 1;
    if (does === 'refused')
      return failed('pad-protocol', 'The pad refused the report; unplug it and plug it in again.');
    if (does === 'left before' || does === 'left after') {
      this.#listener?.lost(gone().problem);
      this.#listener = null;
    }
    if (does === 'left before') return gone();
    const reply = step?.reply ?? null;
    if (reply !== null) {
      const right = replyOf(reply);
      const answer = does === null ? right : wrongly(does, right, reply.offset, this.#lastReply);
      this.#lastReply = right;
      if (answer !== null) queueMicrotask(() => this.#listener?.report(0, reply.reportId, answer));
    }
    return done(undefined);
  }
}

function gone(): ReturnType<typeof failed> {
  return failed('pad-gone', 'Faulty pad is no longer there; plug it in again.');
}

function replyOf({ offset, hex }: NonNullable<StartStep['reply']>): Uint8Array {
  return Uint8Array.from([...new Uint8Array(offset), ...Buffer.from(hex.replaceAll(' ', ''), 'hex')]);
}

function wrongly(does: StepFault, right: Uint8Array, offset: number, last: Uint8Array | null): Uint8Array | null {
  if (does === 'short') return right.subarray(0, right.length - 1);
  if (does === 'stale') return last;
  if (does === 'flipped') return right.map((byte, at) => (at === offset ? byte ^ 0x10 : byte));
  return null;
}
