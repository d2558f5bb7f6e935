/** What each survey's gates are known from, as a hand chose: kept beside its log. */
import { rm } from 'node:fs/promises';
import path from 'node:path';
import type { z } from 'zod';
import type { StickId } from '../../../core/pad/stick.ts';
import { done, type Result } from '../../../core/result.ts';
import { readJson, writeWhole } from '../../store/atomic-file.ts';
import { storageProblem } from '../../store/storage-problem.ts';
import { GATES_FILE, gatesFileSchema } from './survey-file.ts';
import type { KeptSurveys } from './kept-surveys.ts';

export type ChosenGates = z.infer<typeof gatesFileSchema>['sticks'];
type GateChoice = NonNullable<ChosenGates[StickId]>;

export class GateChoices {
  readonly #kept: KeptSurveys;

  constructor(kept: KeptSurveys) {
    this.#kept = kept;
  }

  /** Empty where nothing was chosen. */
  async read(survey: string): Promise<Result<ChosenGates>> {
    const file = this.#fileOf(survey);
    if (!file.ok) return file;
    const read = await readJson(file.value, gatesFileSchema, new Date());
    if (read.kind === 'missing') return done({});
    return read.kind === 'read' ? done(read.value.sticks) : { ok: false, problem: read.problem };
  }

  /** Null takes a choice back. */
  async keep(survey: string, stick: StickId, choice: GateChoice | null): Promise<Result<void>> {
    const log = await this.#kept.logOf(survey);
    if (!log.ok) return log;
    const [file, before] = [this.#fileOf(survey), await this.read(survey)];
    if (!file.ok) return file;
    if (!before.ok) return before;
    const others = Object.entries(before.value).filter(([one]) => one !== stick);
    const sticks = Object.fromEntries(choice === null ? others : [...others, [stick, choice]]);
    if (Object.keys(sticks).length > 0)
      return writeWhole(file.value, `${JSON.stringify({ kind: 'stickwright-gates', version: 1, sticks })}\n`);
    try {
      await rm(file.value, { force: true });
      return done(undefined);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file.value) };
    }
  }

  #fileOf(survey: string): Result<string> {
    const folder = this.#kept.folderOf(survey);
    return folder.ok ? done(path.join(folder.value, GATES_FILE)) : folder;
  }
}
