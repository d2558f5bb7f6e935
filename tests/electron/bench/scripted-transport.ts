/** A transport that a test plays: it answers, reports, fails and leaves when told. */
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { done, type Problem, type Result } from '../../../core/result.ts';
import type { PadSource } from '../../../electron/bench/pads/pad-source.ts';
import type { Transport, TransportListener } from '../../../electron/bench/pads/transport.ts';
import { ONE_STICK } from './write-log.ts';

export class ScriptedTransport implements Transport {
  readonly key: string;
  readonly lockKey: string;
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array | null;
  readonly sent: string[] = [];
  opens = 0;
  closes = 0;
  refusal: Problem | null = null;
  /** Called after each report that was sent. */
  onSent: (hex: string) => void = () => undefined;
  #listener: TransportListener | null = null;

  constructor(key = 'script', identity: Partial<PadIdentity> = {}, descriptor: string | null = ONE_STICK) {
    this.key = key;
    this.lockKey = key;
    this.identity = {
      vendorId: 0x1209,
      productId: 0x0002,
      product: `Scripted ${key}`,
      serial: null,
      transport: 'usb',
      ...identity,
    };
    this.descriptor = descriptor === null ? null : Uint8Array.from(Buffer.from(descriptor, 'hex'));
  }

  open(listener: TransportListener): Promise<Result<void>> {
    this.opens += 1;
    if (this.refusal !== null) return Promise.resolve({ ok: false, problem: this.refusal });
    this.#listener = listener;
    return Promise.resolve(done(undefined));
  }

  report(atMicros: number, reportId: number, ...bytes: number[]): void {
    this.#listener?.report(atMicros, reportId, Uint8Array.from(bytes));
  }

  gap(atMicros: number, lost: number | null): void {
    this.#listener?.gap(atMicros, lost);
  }

  leave(): void {
    this.#listener?.lost({ code: 'pad-gone', says: 'The pad is no longer there; plug it in again.' });
    this.#listener = null;
  }

  sendOutput(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    return this.#take('output', reportId, payload);
  }

  sendFeature(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    return this.#take('feature', reportId, payload);
  }

  readFeature(): Promise<Result<Uint8Array>> {
    return Promise.resolve(done(new Uint8Array(0)));
  }

  close(): Promise<void> {
    this.closes += 1;
    this.#listener = null;
    return Promise.resolve();
  }

  #take(kind: string, reportId: number, payload: Uint8Array): Promise<Result<void>> {
    const hex = `${kind} ${reportId} ${Buffer.from(payload).toString('hex')}`;
    this.sent.push(hex);
    queueMicrotask(() => this.onSent(hex));
    return Promise.resolve(done(undefined));
  }
}

export function sourceOf(transport: Transport, problem: Problem | null = null): PadSource {
  return { transport, problem, rule: null, hand: null };
}
