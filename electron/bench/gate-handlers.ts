/** The calls around what a survey's gates are known from. */
import { done } from '../../core/result.ts';
import type { CallName } from '../../shared/contract.ts';
import type { Handlers } from './calls/call-handlers.ts';
import type { GateChoices } from './surveys/gate-choices.ts';
import type { GateTellers } from './surveys/gate-tellers.ts';

export interface GatePorts {
  readonly choices: GateChoices;
  readonly tellers: GateTellers;
  /** The survey is judged by other terms from now on. */
  readonly judged: (survey: string) => void;
}

export function gateHandlers({ choices, tellers, judged }: GatePorts): Handlers<Extract<CallName, `gates.${string}`>> {
  // One choice after the other: the last one made is the one that is kept, however long a look into its log takes.
  let last: Promise<unknown> = Promise.resolve();
  return {
    'gates.offered': ({ survey, stick }) => tellers.offered(survey, stick),
    'gates.choose': ({ survey, stick, choice }) => {
      const step = last.then(async () => {
        const fits = choice === null ? done(undefined) : await tellers.check(survey, stick, choice);
        if (!fits.ok) return fits;
        const kept = await choices.keep(survey, stick, choice);
        if (!kept.ok) return kept;
        judged(survey);
        return done({});
      });
      // A step that was rejected is answered by whoever called it; the next one starts all the same.
      last = step.catch(() => undefined);
      return step;
    },
  };
}
