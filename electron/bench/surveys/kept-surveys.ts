/** The surveys that are kept: one folder each in the data folder, found again after a restart. */
import { randomBytes } from 'node:crypto';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { ownerOf } from '../../../core/pad/owner.ts';
import type { LogHeader } from '../../../core/log/header.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readJson, writeWhole } from '../../store/atomic-file.ts';
import { makeFolder } from '../../store/own-folder.ts';
import { storageProblem } from '../../store/storage-problem.ts';
import { readLogHeader } from '../../store/log-entries.ts';
import {
  isSurveyHandle,
  LOG_FILE,
  newHandle,
  RECORD_FILE,
  surveyRecordSchema,
  type SurveyRecord,
  type SurveySummary,
} from './survey-file.ts';

export class KeptSurveys {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Newest first. A folder without a log is none of ours and is left alone. */
  async list(): Promise<readonly SurveySummary[]> {
    const names = await readdir(this.#folder).catch(() => []);
    const found = await Promise.all(names.filter(isSurveyHandle).map((name) => this.read(name)));
    return found.flatMap((one) => (one.ok ? [one.value] : [])).sort((a, b) => (a.startedAt < b.startedAt ? 1 : -1));
  }

  /** What is known of one survey; a record that is missing or broken is made again from the log's header. */
  async read(survey: string): Promise<Result<SurveySummary>> {
    const folder = this.#folderOf(survey);
    if (!folder.ok) return folder;
    // A record that is missing, broken or not to be read costs a look at the log.
    const record = await readJson(path.join(folder.value, RECORD_FILE), surveyRecordSchema, new Date());
    const { pad, domain } = record.kind === 'read' ? record.value : {};
    if (record.kind === 'read' && pad !== undefined && domain !== undefined)
      return done(summaryOf(survey, { ...record.value, pad, domain }));
    const header = await readLogHeader(path.join(folder.value, LOG_FILE));
    if (!header.ok) return header;
    const fromLog = recordOf(header.value, null, false);
    return done(
      summaryOf(
        survey,
        record.kind === 'read' ? { ...fromLog, ...record.value, pad: fromLog.pad, domain: fromLog.domain } : fromLog,
      ),
    );
  }

  /** The log of a survey that is there. */
  async logOf(survey: string): Promise<Result<string>> {
    const folder = this.#folderOf(survey);
    if (!folder.ok) return folder;
    const file = path.join(folder.value, LOG_FILE);
    const there = await stat(file).catch(() => null);
    return there === null ? unknownSurvey() : done(file);
  }

  folderOf(survey: string): Result<string> {
    return this.#folderOf(survey);
  }

  /** Makes a folder for a log that is about to be recorded, and says where the log is to be. */
  async begin(header: LogHeader): Promise<Result<{ survey: string; log: string }>> {
    const survey = newHandle(new Date(header.startedAt), randomBytes(3).toString('hex'));
    const folder = path.join(this.#folder, survey);
    try {
      await makeFolder(folder);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', folder) };
    }
    const written = await writeRecord(folder, recordOf(header, null, false));
    if (written.ok) return done({ survey, log: path.join(folder, LOG_FILE) });
    await rm(folder, { recursive: true, force: true });
    return written;
  }

  /** Marks a survey as ended in good order. */
  async finish(survey: string): Promise<Result<void>> {
    const known = await this.read(survey);
    if (!known.ok) return known;
    const { name, startedAt, stage, product, simulated, pad, domain } = known.value;
    const record = { name, startedAt, stage, product, simulated, pad, domain, finished: true };
    return writeRecord(path.join(this.#folder, survey), { kind: 'stickwright-survey', version: 1, ...record });
  }

  /** Takes a checked log that lies on the same disk into a folder of its own. */
  async adopt(file: string, header: LogHeader, name: string): Promise<Result<SurveySummary>> {
    const survey = newHandle(new Date(), randomBytes(3).toString('hex'));
    const folder = path.join(this.#folder, survey);
    const record = recordOf(header, name, true);
    try {
      await makeFolder(folder);
      // The log comes last: until it is there the folder is no survey, and nothing of one stays where the disk is full.
      const written = await writeRecord(folder, record);
      if (written.ok) await rename(file, path.join(folder, LOG_FILE));
      else await rm(folder, { recursive: true, force: true });
      return written.ok ? done(summaryOf(survey, record)) : written;
    } catch (thrown) {
      await rm(folder, { recursive: true, force: true });
      return { ok: false, problem: storageProblem(thrown, 'write', folder) };
    }
  }

  #folderOf(survey: string): Result<string> {
    return isSurveyHandle(survey) ? done(path.join(this.#folder, survey)) : unknownSurvey();
  }
}

function writeRecord(folder: string, record: SurveyRecord): Promise<Result<void>> {
  return writeWhole(path.join(folder, RECORD_FILE), `${JSON.stringify(record)}\n`);
}

function unknownSurvey(): ReturnType<typeof failed> {
  return failed('survey-unknown', 'This survey is no longer there; choose one from the list.');
}

function summaryOf(
  survey: string,
  { name, startedAt, stage, product, simulated, finished, pad, domain }: SurveyRecord,
): SurveySummary {
  return { survey, name, startedAt, stage, product, simulated, finished, pad, domain };
}

/** A log without a name of its own is called by its pad. */
function recordOf(header: LogHeader, name: string | null, finished: boolean): SurveyRecord {
  const { product, transport } = header.pad;
  return {
    kind: 'stickwright-survey',
    version: 1,
    name: name ?? (product === '' ? 'Pad without a name' : product),
    startedAt: header.startedAt,
    stage: header.stage,
    product,
    simulated: transport === 'simulated',
    finished,
    pad: ownerOf(header.pad, header.pad.unit),
    domain: header.domain,
  };
}
