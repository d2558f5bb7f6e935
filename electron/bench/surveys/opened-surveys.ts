/** Kept surveys as the screen asks for them: opened with their measures, which are worked out once and kept beside the log. */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import type { Limits } from '../../../core/findings/limits.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import { readJson, writeWhole } from '../../store/atomic-file.ts';
import type { MeasureThread } from '../measure/measure-thread.ts';
import { measuredSchema, type Measured } from '../measure/measured.ts';
import { MEASURED_FILE } from './survey-file.ts';
import type { KeptSurveys } from './kept-surveys.ts';

/** Measures kept beside a log hold for this version of the program, this state of the log and these limits. */
const keptSchema = z.object({ program: z.string(), log: z.string(), limits: z.string(), measured: measuredSchema });

export class OpenedSurveys {
  readonly #kept: KeptSurveys;
  readonly #thread: MeasureThread;
  readonly #program: string;
  readonly #limits: () => Limits;

  constructor(keptSurveys: KeptSurveys, thread: MeasureThread, program: string, limits: () => Limits) {
    this.#kept = keptSurveys;
    this.#thread = thread;
    this.#program = program;
    this.#limits = limits;
  }

  async open(survey: string): Promise<Result<Reply<'surveys.open'>>> {
    const summary = await this.#kept.read(survey);
    if (!summary.ok) return summary;
    const measured = await this.#measured(survey);
    return measured.ok ? done({ survey, name: summary.value.name, ...measured.value }) : measured;
  }

  async propose({ survey, stick, wish }: Request<'surveys.propose'>): Promise<Result<Reply<'surveys.propose'>>> {
    const measured = await this.#measured(survey);
    if (!measured.ok) return measured;
    const known = measured.value.sticks[stick];
    if (known === undefined) return failed('stick-unknown', `The log has no ${stick} stick; choose the other one.`);
    const { evidence, current } = known;
    const asked = { stick, evidence, current, findings: measured.value.report.findings };
    const proposal = await this.#thread.propose(asked, wish, this.#limits());
    if (!proposal.ok) return proposal;
    const { mapping, aim, centreBy, guard, reasons, hides } = proposal.value;
    return done({ mapping, aim, centreBy, guard, reasons: [...reasons], hides });
  }

  async strip({ survey, ...wish }: Request<'surveys.strip'>): Promise<Result<Reply<'surveys.strip'>>> {
    const log = await this.#kept.logOf(survey);
    return log.ok ? this.#thread.strip(log.value, wish) : log;
  }

  async #measured(survey: string): Promise<Result<Measured>> {
    const [log, folder] = [await this.#kept.logOf(survey), this.#kept.folderOf(survey)];
    if (!log.ok) return log;
    if (!folder.ok) return folder;
    const { size, mtimeMs } = await stat(log.value);
    const state = `${size}-${Math.round(mtimeMs)}`;
    const file = path.join(folder.value, MEASURED_FILE);
    const read = await readJson(file, keptSchema, new Date());
    const kept = read.kind === 'read' ? read.value : null;
    const inForce = this.#limits();
    const limits = JSON.stringify(Object.entries(inForce).map(([id, { value, setBy }]) => [id, value, setBy]));
    if (kept?.program === this.#program && kept.log === state && kept.limits === limits) return done(kept.measured);
    const measured = await this.#thread.measure(log.value, inForce);
    // Where the disk is full nothing is kept, which costs the next look a second's work and nothing else.
    if (measured.ok)
      await writeWhole(file, JSON.stringify({ program: this.#program, log: state, limits, measured: measured.value }));
    return measured;
  }
}
