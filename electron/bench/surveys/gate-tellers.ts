/** Which kept surveys can tell of the gate of a stick in another one. */
import { refuseGateOwner } from '../../../core/findings/gate-owner.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { MeasureThread } from '../measure/measure-thread.ts';
import type { KeptSurveys } from './kept-surveys.ts';
import type { OpenedSurveys } from './opened-surveys.ts';

type Choice = NonNullable<Request<'gates.choose'>['choice']>;

export interface TellerPorts {
  readonly kept: KeptSurveys;
  readonly opened: OpenedSurveys;
  readonly thread: MeasureThread;
}

export class GateTellers {
  readonly #from: TellerPorts;

  constructor(from: TellerPorts) {
    this.#from = from;
  }

  /** Finished surveys of the same pad that hold a rest and a rim of the stick, newest first. */
  async offered(survey: string, stick: StickId): Promise<Result<string[]>> {
    const judged = await this.#from.kept.read(survey);
    if (!judged.ok) return judged;
    const offered: string[] = [];
    // One after the other: a survey that nobody has opened yet is measured for it.
    for (const one of await this.#from.kept.list()) {
      if (one.survey === survey || !one.finished || refuseGateOwner(one, judged.value) !== null) continue;
      const told = await this.#from.opened.tells(one.survey);
      // A log that cannot be read tells of no gate; why it cannot is told to whoever opens it.
      if (told.ok && told.value.includes(stick)) offered.push(one.survey);
    }
    return done(offered);
  }

  /** Looks into the chosen survey itself: what is refused here is never kept. */
  async check(survey: string, stick: StickId, choice: Choice): Promise<Result<void>> {
    if (choice.survey === survey)
      return failed('gate-of-itself', 'A survey tells nothing new of its own gate; choose another one.');
    const log = await this.#from.kept.logOf(choice.survey);
    if (!log.ok) return log;
    const [judged, told] = [await this.#from.kept.read(survey), await this.#from.kept.read(choice.survey)];
    if (!judged.ok) return judged;
    if (!told.ok) return told;
    const refused = refuseGateOwner(told.value, judged.value);
    if (refused !== null) return { ok: false, problem: refused };
    if (!told.value.finished)
      return failed('gate-survey-unfinished', 'That survey has not come to its end; finish it or choose another one.');
    return this.#from.thread.tellsGate(log.value, stick, choice.from);
  }
}
