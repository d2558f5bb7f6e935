/** The one service behind every shell, as shells see it; it knows neither Electron nor HTTP. */
import type { Result } from '../../../core/result.ts';
import type { CallName, EventName, EventPayload, Reply, Request } from '../../../shared/contract.ts';

export interface Bench {
  handle<N extends CallName>(name: N, request: Request<N>): Promise<Result<Reply<N>>>;
  /** Returns the function that ends the listening. */
  listen<N extends EventName>(name: N, hear: (payload: EventPayload<N>) => void): () => void;
  /**
   * Encoded sample batches of every open pad, at most one per pad every 16 ms. While `ready` says no, batches for this
   * listener are left out and the next one begins with a gap that says how many reports were not shown; the recorder
   * never leaves anything out.
   */
  samples(hear: (batch: Uint8Array) => void, ready?: () => boolean): () => void;
  /** Before the machine sleeps: captures end with what was taken, pads are closed. */
  suspend(): Promise<void>;
  /** After the machine slept: the pad in hand is opened again. */
  resume(): void;
  close(): Promise<void>;
}
