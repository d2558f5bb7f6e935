/** Kept surveys as the screen asks for them: opened with their measures, which are worked out once and kept beside the log. */
import type { Limits } from '../../../core/findings/limits.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import type { MeasureThread } from '../measure/measure-thread.ts';
import type { Measured } from '../measure/measured.ts';
import type { GateChoices } from './gate-choices.ts';
import { gatesInForce, type GatesInForce } from './gates-in-force.ts';
import { gatesIn, keepMeasures, logState, readMeasures, sticksWithGate } from './kept-measures.ts';
import type { KeptSurveys } from './kept-surveys.ts';

export interface OpenedPorts {
  readonly kept: KeptSurveys;
  readonly gates: GateChoices;
  readonly thread: MeasureThread;
  readonly program: string;
  readonly limits: () => Limits;
}

interface Judged extends Pick<GatesInForce, 'chosen' | 'gone'> {
  readonly measured: Measured;
}

export class OpenedSurveys {
  readonly #from: OpenedPorts;

  constructor(from: OpenedPorts) {
    this.#from = from;
  }

  async open(survey: string): Promise<Result<Reply<'surveys.open'>>> {
    const summary = await this.#from.kept.read(survey);
    if (!summary.ok) return summary;
    const judged = await this.#judged(survey);
    if (!judged.ok) return judged;
    const { chosen, gone, measured } = judged.value;
    const { untold, ...all } = measured;
    const gates = STICKS.flatMap((stick) => {
      const choice = chosen[stick];
      return choice === undefined
        ? []
        : [[stick, { ...choice, problem: gone[stick] ?? untold[stick] ?? null }] as const];
    });
    return done({ survey, name: summary.value.name, ...all, gates: Object.fromEntries(gates) });
  }

  async propose({ survey, stick, wish }: Request<'surveys.propose'>): Promise<Result<Reply<'surveys.propose'>>> {
    const judged = await this.#judged(survey);
    if (!judged.ok) return judged;
    const { sticks, report } = judged.value.measured;
    const known = sticks[stick];
    if (known === undefined) return failed('stick-unknown', `The log has no ${stick} stick; choose the other one.`);
    const { evidence, current } = known;
    const asked = { stick, evidence, current, findings: report.findings };
    const proposal = await this.#from.thread.propose(asked, wish, this.#from.limits());
    if (!proposal.ok) return proposal;
    const { mapping, aim, centreBy, guard, reasons, hides } = proposal.value;
    return done({ mapping, aim, centreBy, guard, reasons: [...reasons], hides });
  }

  async strip({ survey, ...wish }: Request<'surveys.strip'>): Promise<Result<Reply<'surveys.strip'>>> {
    const log = await this.#from.kept.logOf(survey);
    return log.ok ? this.#from.thread.strip(log.value, wish) : log;
  }

  /** The sticks of which it holds a rest and a rim: whose gate it may tell. */
  async tells(survey: string): Promise<Result<readonly StickId[]>> {
    const [log, folder] = [await this.#from.kept.logOf(survey), this.#from.kept.folderOf(survey)];
    if (!log.ok) return log;
    if (!folder.ok) return folder;
    const known = await sticksWithGate(folder.value, await logState(log.value));
    if (known !== null) return done(known);
    const judged = await this.#judged(survey);
    return judged.ok ? done(gatesIn(judged.value.measured)) : judged;
  }

  async #judged(survey: string): Promise<Result<Judged>> {
    const { kept, gates, thread, program, limits } = this.#from;
    const [log, folder] = [await kept.logOf(survey), kept.folderOf(survey)];
    if (!log.ok) return log;
    if (!folder.ok) return folder;
    const inForce = await gatesInForce(survey, kept, gates);
    if (!inForce.ok) return inForce;
    const { chosen, logs, gone, says } = inForce.value;
    const held = limits();
    const made = {
      program,
      log: await logState(log.value),
      limits: JSON.stringify(Object.entries(held).map(([id, { value, setBy }]) => [id, value, setBy])),
      gates: says,
    };
    const known = await readMeasures(folder.value, made);
    if (known !== null) return done({ measured: known, chosen, gone });
    const measured = await thread.measure(log.value, held, logs);
    if (!measured.ok) return measured;
    await keepMeasures(folder.value, made, measured.value);
    return done({ measured: measured.value, chosen, gone });
  }
}
