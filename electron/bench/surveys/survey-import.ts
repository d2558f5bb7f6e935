/** Takes a log in pieces into a file of its own, and among the kept surveys once all of it was read without a fault. */
import { randomBytes } from 'node:crypto';
import { open, readdir, rm, stat, type FileHandle } from 'node:fs/promises';
import path from 'node:path';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import { makeFolder, OWN_FILE } from '../../store/own-folder.ts';
import { storageProblem } from '../../store/storage-problem.ts';
import { systemError } from '../../store/whole-file.ts';
import { readLogHeader } from '../../store/log-entries.ts';
import type { SurveySummary } from './survey-file.ts';
import type { KeptSurveys } from './kept-surveys.ts';

/** Some hours at 1,000 reports a second. */
const LARGEST_BYTES = 1_073_741_824;
const MOST_UPLOADS = 4;
const STALE_MILLIS = 86_400_000;
const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/u;

interface Upload {
  readonly file: string;
  handle: FileHandle | null;
  bytes: number;
  /** What the upload came to, once a piece failed: every further piece is answered with it. */
  failure: Result<never> | null;
  /** Pieces are written one after the other, in the order in which they came. */
  queue: Promise<unknown>;
}

export class SurveyImport {
  readonly #folder: string;
  readonly #kept: KeptSurveys;
  /** Reads the whole log; its problem is the import's. */
  readonly #check: (file: string) => Promise<Result<unknown>>;
  readonly #uploads = new Map<string, Upload>();

  /** `folder` is on the kept surveys' own disk, for what is not whole yet. */
  constructor(folder: string, keptSurveys: KeptSurveys, check: (file: string) => Promise<Result<unknown>>) {
    this.#folder = folder;
    this.#kept = keptSurveys;
    this.#check = check;
  }

  /** Null until the last piece has come. After a problem the upload is over and what came of it is gone. */
  take({ upload, name, piece, last }: Request<'surveys.import'>): Promise<Result<SurveySummary | null>> {
    const known = this.#uploads.get(upload) ?? this.#meet(upload);
    if (known === null)
      return Promise.resolve(
        failed('import-busy', 'Several logs are being taken in already; wait until they are done.'),
      );
    const step = known.queue.then(async () => {
      const result = known.failure ?? (await this.#write(known, piece, last ? name : null));
      if (!result.ok) known.failure = result;
      if (!result.ok || last) await this.#end(upload);
      return result;
    });
    known.queue = step;
    return step;
  }

  async close(): Promise<void> {
    for (const upload of [...this.#uploads.keys()]) await this.#end(upload);
  }

  #meet(upload: string): Upload | null {
    if (this.#uploads.size >= MOST_UPLOADS) return null;
    const file = path.join(this.#folder, `${randomBytes(8).toString('hex')}.part`);
    const met: Upload = { file, handle: null, bytes: 0, failure: null, queue: Promise.resolve() };
    this.#uploads.set(upload, met);
    return met;
  }

  async #begin(file: string): Promise<FileHandle> {
    await makeFolder(this.#folder);
    await this.#sweep();
    return open(file, 'wx', OWN_FILE);
  }

  async #write(upload: Upload, piece: string, lastName: string | null): Promise<Result<SurveySummary | null>> {
    if (!BASE64.test(piece)) return failed('import-damaged', 'A piece of the log came damaged; take it in once more.');
    const bytes = Buffer.from(piece, 'base64');
    upload.bytes += bytes.length;
    if (upload.bytes > LARGEST_BYTES)
      return failed('import-too-large', 'The log is larger than 1 GiB; cut it before you take it in.');
    try {
      upload.handle ??= await this.#begin(upload.file);
      await upload.handle.writeFile(bytes);
      if (lastName === null) return done(null);
      await upload.handle.sync();
      const { size } = await upload.handle.stat();
      if (size !== upload.bytes) throw systemError('ENOSPC', 'the disk kept only a part');
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', upload.file) };
    }
    const header = await readLogHeader(upload.file);
    if (!header.ok) return header;
    const checked = await this.#check(upload.file);
    if (!checked.ok) return checked;
    return this.#kept.adopt(upload.file, header.value, nameWithoutEnding(lastName));
  }

  async #end(upload: string): Promise<void> {
    const one = this.#uploads.get(upload);
    if (one === undefined) return;
    this.#uploads.delete(upload);
    await one.handle?.close().catch(() => undefined);
    await rm(one.file, { force: true });
  }

  /** What a program that was killed left behind. */
  async #sweep(): Promise<void> {
    const before = Date.now() - STALE_MILLIS;
    for (const name of await readdir(this.#folder)) {
      const file = path.join(this.#folder, name);
      const found = await stat(file).catch(() => null);
      if (name.endsWith('.part') && found !== null && found.mtimeMs < before) await rm(file, { force: true });
    }
  }
}

/** The file's own name without folders and ending; it only names the survey on screen. */
function nameWithoutEnding(name: string): string {
  const own = name.split(/[/\\]/u).at(-1) ?? '';
  return own.replace(/\.padlog$/iu, '') || 'Imported log';
}
