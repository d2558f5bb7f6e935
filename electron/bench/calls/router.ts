/** Checks every message between the bench and a shell against the contract, in both directions; nothing throws across. */
import type { z } from 'zod';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import { sayIssue } from '../../../core/say-issue.ts';
import { calls, events, type CallName, type EventName } from '../../../shared/contract.ts';
import { EVENT_NAMES, isCallName } from '../../../shared/names.ts';
import type { Bench } from './bench-port.ts';

export interface Router {
  /** Whatever came in from outside; the answer is always a value. */
  answer(name: unknown, request: unknown): Promise<Result<unknown>>;
  /** Hears every event of the bench that keeps to the contract; returns the function that ends it. */
  events(hear: (name: EventName, payload: unknown) => void): () => void;
}

/** `fault` hears what the bench itself did wrong: a reply or an event outside of the contract, or an exception. */
export function createRouter(bench: Bench, fault: (problem: Problem) => void): Router {
  return {
    async answer(name, request) {
      if (!isCallName(name))
        return failed('call-unknown', 'This call is not known to the bench; reload the window so that both are alike.');
      const parsed = calls[name].request.safeParse(request);
      if (!parsed.success)
        return failed(
          'request-invalid',
          `The request ${name} was refused: ${firstIssue(parsed.error, request)}; correct it and try again.`,
        );
      try {
        return checkReply(name, await bench.handle(name, parsed.data), fault);
      } catch (thrown) {
        const problem = benchFault(`The call ${name} failed inside the bench (${wordsOf(thrown)}); try it once more.`);
        fault(problem);
        return { ok: false, problem };
      }
    },
    events(hear) {
      const ends = EVENT_NAMES.map((name) =>
        bench.listen(name, (payload) => {
          const parsed = events[name].safeParse(payload);
          if (parsed.success) hear(name, parsed.data);
          else
            fault(
              benchFault(`The event ${name} breaks the contract: ${firstIssue(parsed.error, payload)}; report this.`),
            );
        }),
      );
      return () => {
        for (const end of ends) end();
      };
    },
  };
}

function checkReply(name: CallName, result: Result<unknown>, fault: (problem: Problem) => void): Result<unknown> {
  if (!result.ok) return result;
  const parsed = calls[name].reply.safeParse(result.value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const problem = benchFault(
    `The reply to ${name} breaks the contract: ${firstIssue(parsed.error, result.value)}; report this.`,
  );
  fault(problem);
  return { ok: false, problem };
}

function benchFault(says: string): Problem {
  return { code: 'bench-fault', says };
}

function firstIssue({ issues }: z.core.$ZodError, value: unknown): string {
  const [issue] = issues;
  return issue === undefined ? 'it is not of the form agreed' : sayIssue(issue, value);
}

function wordsOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
