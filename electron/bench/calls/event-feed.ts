/** Who listens to which event of the bench. */
import type { EventName, EventPayload } from '../../../shared/contract.ts';

type Hear = (payload: never) => void;

export class EventFeed {
  readonly #hearers = new Map<EventName, Set<Hear>>();

  listen<N extends EventName>(name: N, hear: (payload: EventPayload<N>) => void): () => void {
    const set = this.#hearers.get(name) ?? new Set<Hear>();
    this.#hearers.set(name, set);
    set.add(hear);
    return () => {
      set.delete(hear);
    };
  }

  tell<N extends EventName>(name: N, payload: EventPayload<N>): void {
    for (const hear of this.#hearers.get(name) ?? []) (hear as (payload: EventPayload<N>) => void)(payload);
  }
}
