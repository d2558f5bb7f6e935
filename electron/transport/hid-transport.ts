/** A real pad as a transport. The handler of incoming data only stamps and hands on; decoding is done elsewhere. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { Clock } from '../bench/time/clock.ts';
import type { HidHandle, HidPort } from './hid-port.ts';
import { hidProblem } from './hid-problem.ts';
import type { Transport, TransportListener } from '../bench/pads/transport.ts';

/** A pad as it was found; `path` is what the library opens. */
export interface HidPad {
  readonly key: string;
  readonly path: string;
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array | null;
  /** Incoming bytes begin with a report id. */
  readonly hasReportIds: boolean;
}

export interface HidTransportPorts {
  readonly hid: HidPort;
  readonly clock: Clock;
  readonly platform: NodeJS.Platform;
}

export class HidTransport implements Transport {
  readonly key: string;
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array | null;
  readonly lockKey: string;
  readonly #pad: HidPad;
  readonly #ports: HidTransportPorts;
  #handle: HidHandle | null = null;
  #opening = false;
  /** Counts openings and closings: what belongs to an earlier one is not heard any more. */
  #turn = 0;
  /** One request at a time: replies of two under way could be mixed up. */
  #asking: Promise<unknown> = Promise.resolve();
  #closing: Promise<void> = Promise.resolve();

  constructor(pad: HidPad, ports: HidTransportPorts) {
    this.key = pad.key;
    this.identity = pad.identity;
    this.descriptor = pad.descriptor;
    this.lockKey = pad.path;
    this.#pad = pad;
    this.#ports = ports;
  }

  async open(listener: TransportListener): Promise<Result<void>> {
    if (this.#handle !== null || this.#opening)
      return failed('pad-busy', `${this.identity.product} is open already; close it first.`);
    this.#opening = true;
    this.#turn += 1;
    const turn = this.#turn;
    try {
      await this.#closing;
      const handle = await this.#ports.hid.open(this.#pad.path);
      if (turn === this.#turn) this.#listen(handle, listener, turn);
      else {
        await handle.close();
        return failed('pad-gone', `${this.identity.product} was closed while it was being opened; open it again.`);
      }
      return done(undefined);
    } catch (thrown) {
      return this.#failure(thrown);
    } finally {
      this.#opening = false;
    }
  }

  async sendOutput(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    const sent = await this.#ask((handle) => handle.write(Buffer.from([reportId, ...payload])));
    return sent.ok ? done(undefined) : sent;
  }

  async sendFeature(reportId: number, payload: Uint8Array): Promise<Result<void>> {
    const sent = await this.#ask((handle) => handle.sendFeatureReport(Buffer.from([reportId, ...payload])));
    return sent.ok ? done(undefined) : sent;
  }

  /** `length` and the answer are without the report id, which the library counts and puts first. */
  async readFeature(reportId: number, length: number): Promise<Result<Uint8Array>> {
    const read = await this.#ask((handle) => handle.getFeatureReport(reportId, length + 1));
    return read.ok ? done(Uint8Array.from(read.value).subarray(1)) : read;
  }

  close(): Promise<void> {
    const handle = this.#handle;
    this.#turn += 1;
    this.#handle = null;
    // The library begins to read in the tick after its listener came; a handle closed before that would end the program.
    if (handle !== null) {
      this.#closing = this.#asking
        .then(() => nextTurn())
        .then(() => handle.close())
        .catch(alreadyGone);
    }
    return this.#closing;
  }

  #listen(handle: HidHandle, listener: TransportListener, turn: number): void {
    this.#handle = handle;
    // An error that nobody hears ends the program, so this listener comes first and stays.
    handle.on('error', (thrown) => {
      if (turn !== this.#turn) return;
      void this.close();
      listener.lost(hidProblem(thrown, this.identity, this.#ports.platform));
    });
    const { clock } = this.#ports;
    const skip = this.#pad.hasReportIds ? 1 : 0;
    handle.on('data', (bytes) => {
      const atMicros = clock.micros();
      if (turn !== this.#turn) return;
      listener.report(atMicros, skip === 1 ? (bytes[0] ?? 0) : 0, bytes.subarray(skip));
    });
  }

  #ask<T>(request: (handle: HidHandle) => Promise<T>): Promise<Result<T>> {
    const answer = this.#asking.then(async (): Promise<Result<T>> => {
      const handle = this.#handle;
      if (handle === null) return failed('pad-not-open', `${this.identity.product} is not open; open it first.`);
      try {
        return done(await request(handle));
      } catch (thrown) {
        return this.#failure(thrown);
      }
    });
    this.#asking = answer;
    return answer;
  }

  #failure(thrown: unknown): ReturnType<typeof failed> {
    return { ok: false, problem: hidProblem(thrown, this.identity, this.#ports.platform) };
  }
}

/** Closing a device that has left may be refused; it is as closed as it can be. */
function alreadyGone(): void {
  return undefined;
}
