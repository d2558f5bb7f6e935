/** Hands work on whole logs to the worker thread and the results back; the thread is started when first needed. */
import { Worker } from 'node:worker_threads';
import type { FoundPlace } from '../../../core/image/found-place.ts';
import type { GateSource } from '../../../core/findings/outline/known-gate.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import { failed, type Result } from '../../../core/result.ts';
import type { GateLogs } from './gate-logs.ts';
import type { StripWish, Work } from './measure-worker.ts';
import type { Measured } from './measured.ts';
import type { AskedStick, StickProposal, Wish } from './propose-for.ts';

type Job = Work extends infer W ? (W extends unknown ? Omit<W, 'id'> : never) : never;

export class MeasureThread {
  readonly #script: URL;
  readonly #waiting = new Map<number, (result: Result<never>) => void>();
  #worker: Worker | null = null;
  #next = 0;

  /** `script` is the worker's own file, which stands elsewhere in the sources than when built. */
  constructor(script: URL) {
    this.#script = script;
  }

  /** `gates`: the logs that the gates are known from. */
  measure(file: string, limits: Limits, gates: GateLogs): Promise<Result<Measured>> {
    return this.#ask({ does: 'measure', file, limits, gates });
  }

  /** Whether a log tells of the gate of a stick; the problem says why not. */
  tellsGate(file: string, stick: StickId, from: GateSource): Promise<Result<void>> {
    return this.#ask({ does: 'tells-gate', file, stick, from });
  }

  propose(asked: AskedStick, wish: Wish, limits: Limits): Promise<Result<StickProposal>> {
    return this.#ask({ does: 'propose', asked, wish, limits });
  }

  /** A stretch of a log, thinned. */
  strip(file: string, wish: StripWish): Promise<Result<{ x: number[]; y: number[] }>> {
    return this.#ask({ does: 'strip', file, wish });
  }

  /** Where an image may hold the measured calibration. */
  find(image: Uint8Array, measured: PadMapping): Promise<Result<FoundPlace[]>> {
    return this.#ask({ does: 'find', image, measured });
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
  }

  #ask<T>(job: Job): Promise<Result<T>> {
    const id = this.#next;
    this.#next += 1;
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve);
      this.#start().postMessage({ ...job, id });
    });
  }

  #start(): Worker {
    if (this.#worker !== null) return this.#worker;
    const worker = new Worker(this.#script);
    worker.unref();
    worker.on('message', ({ id, result }: { id: number; result: Result<never> }) => {
      this.#waiting.get(id)?.(result);
      this.#waiting.delete(id);
    });
    let words = 'it was ended';
    worker.on('error', (error) => (words = error instanceof Error ? error.message : String(error)));
    worker.on('exit', () => {
      this.#worker = null;
      const end = failed('measure-fault', `The measuring thread stopped (${words}); try it once more.`);
      for (const resolve of this.#waiting.values()) resolve(end);
      this.#waiting.clear();
    });
    this.#worker = worker;
    return worker;
  }
}
