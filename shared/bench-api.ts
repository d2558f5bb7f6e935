/** The one port of the renderer to the bench; each shell gives it as `window.bench` or builds it over its socket. */
import type { Result } from '../core/result.ts';
import type { CallName, EventName, EventPayload, Reply, Request } from './contract.ts';

export interface BenchApi {
  /** Never rejects: what went wrong is a value. */
  call<N extends CallName>(name: N, request: Request<N>): Promise<Result<Reply<N>>>;
  /** Returns the function that ends the listening. */
  listen<N extends EventName>(name: N, hear: (payload: EventPayload<N>) => void): () => void;
  /** Raw reports of every open pad, as encoded sample batches (shared/sample-batch). */
  samples(hear: (batch: Uint8Array) => void): () => void;
}
