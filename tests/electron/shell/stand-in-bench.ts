/** A bench that answers what a test gives it: for shells, which must not care what the answers are. */
import { failed, type Result } from '../../../core/result.ts';
import type { CallName, EventName } from '../../../shared/contract.ts';
import type { Bench } from '../../../electron/bench/calls/bench-port.ts';

export interface StandInBench extends Bench {
  readonly asked: { name: CallName; request: unknown }[];
  tell(name: EventName, payload: unknown): void;
  show(batch: Uint8Array): void;
  readonly listeners: () => number;
  readonly suspended: () => number;
}

export function standInBench(answers: Partial<Record<CallName, (request: unknown) => unknown>> = {}): StandInBench {
  const asked: { name: CallName; request: unknown }[] = [];
  const hearers = new Map<EventName, Set<(payload: never) => void>>();
  const shown = new Set<{ hear: (batch: Uint8Array) => void; ready: () => boolean }>();
  let suspended = 0;
  return {
    asked,
    handle(name, request) {
      asked.push({ name, request });
      const answer = answers[name];
      if (answer === undefined) return Promise.resolve(failed('not-here', 'The stand-in has no answer; give it one.'));
      return Promise.resolve(answer(request) as Result<never>);
    },
    listen(name, hear) {
      const set = hearers.get(name) ?? new Set();
      hearers.set(name, set.add(hear));
      return () => void set.delete(hear);
    },
    samples(hear, ready = () => true) {
      const listener = { hear, ready };
      shown.add(listener);
      return () => void shown.delete(listener);
    },
    resume: () => undefined,
    suspend() {
      suspended += 1;
      return Promise.resolve();
    },
    close: () => Promise.resolve(),
    tell(name, payload) {
      for (const hear of hearers.get(name) ?? []) hear(payload as never);
    },
    show(batch) {
      for (const { hear, ready } of shown) if (ready()) hear(batch);
    },
    listeners: () => shown.size,
    suspended: () => suspended,
  };
}
