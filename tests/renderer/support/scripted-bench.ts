/** A bench for controller tests: answers calls as the test says, tells events when the test says, and keeps what was asked. */
import { failed, type Result } from '../../../core/result.ts';
import type { BenchApi } from '../../../shared/bench-api.ts';
import type { CallName, EventName, EventPayload, Reply, Request } from '../../../shared/contract.ts';

type Answers = { [N in CallName]?: (request: Request<N>) => Result<Reply<N>> };

export interface ScriptedBench extends BenchApi {
  readonly asked: { name: CallName; request: unknown }[];
  readonly answers: Answers;
  tell<N extends EventName>(name: N, payload: EventPayload<N>): void;
  send(batch: Uint8Array): void;
}

export function scriptedBench(answers: Answers): ScriptedBench {
  const asked: { name: CallName; request: unknown }[] = [];
  const hearers = new Map<EventName, Set<(payload: never) => void>>();
  const batchHearers = new Set<(batch: Uint8Array) => void>();
  return {
    asked,
    answers,
    call(name, request) {
      asked.push({ name, request });
      const answer = answers[name];
      return Promise.resolve(
        answer === undefined ? failed('not-scripted', `${name} is not scripted.`) : answer(request),
      );
    },
    listen(name, hear) {
      const set = hearers.get(name) ?? new Set();
      hearers.set(name, set.add(hear));
      return () => void set.delete(hear);
    },
    samples(hear) {
      batchHearers.add(hear);
      return () => void batchHearers.delete(hear);
    },
    tell(name, payload) {
      for (const hear of hearers.get(name) ?? []) hear(payload as never);
    },
    send(batch) {
      for (const hear of batchHearers) hear(batch);
    },
  };
}
