/**
 * CommandConfirmations that outlast a program: what one run showed, another may do. Each is good once, on one pad, for exactly what was
 * shown, and not for long. A file for each pad holds the newest; the confirmation itself stands in none.
 */
import { createHash, randomBytes } from 'node:crypto';
import { unlink } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { done, failed, type Result } from '../../core/result.ts';
import { readJson, writeWhole } from './atomic-file.ts';
import { makeFolder } from './own-folder.ts';
import { storageProblem } from './storage-problem.ts';

/** Long enough to read the memory of a slow pad again and to think; what was shown is no longer in mind after it. */
export const CONFIRMATION_SECONDS = 600;

const fileSchema = z.object({
  kind: z.literal('stickwright-confirmation'),
  version: z.literal(1),
  /** SHA-256 of the confirmation, and of what it was given for. */
  token: z.string(),
  shown: z.string(),
  /** ISO 8601. */
  until: z.iso.datetime(),
});

export interface Confirmation {
  readonly token: string;
  readonly until: Date;
}

export class CommandConfirmations {
  readonly #folder: string;
  readonly #now: () => Date;

  constructor(folder: string, now: () => Date) {
    this.#folder = folder;
    this.#now = now;
  }

  /** `shown` is all that the person saw, as a text; an older confirmation of the pad counts no more. */
  async issue(pad: string, shown: string): Promise<Result<Confirmation>> {
    const token = randomBytes(8).toString('hex');
    const until = new Date(this.#now().getTime() + 1000 * CONFIRMATION_SECONDS);
    const file = this.#fileOf(pad);
    const held: z.infer<typeof fileSchema> = {
      kind: 'stickwright-confirmation',
      version: 1,
      token: digest(token),
      shown: digest(shown),
      until: until.toISOString(),
    };
    try {
      await makeFolder(this.#folder);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
    const written = await writeWhole(file, `${JSON.stringify(held)}\n`);
    return written.ok ? done({ token, until }) : written;
  }

  /** Whether it is this pad's and fresh; what it was given for is told by its use. */
  async check(pad: string, token: string): Promise<Result<z.infer<typeof fileSchema>>> {
    const read = await readJson(this.#fileOf(pad), fileSchema, this.#now());
    if (read.kind !== 'read' || read.value.token !== digest(token)) return unknown();
    const left = Date.parse(read.value.until) - this.#now().getTime();
    // More is left than there ever was: the clock was set back meanwhile, and how old it is cannot be told.
    if (left >= 0 && left <= 1000 * CONFIRMATION_SECONDS) return done(read.value);
    return failed(
      'confirmation-expired',
      'The confirmation is too old; run the command without --confirm, look at the plan again and confirm it.',
    );
  }

  /**
   * Uses it up, if it is for exactly this; of two programs at once one alone succeeds. The value gives it back, for a write that
   * was refused before it began.
   */
  async use(pad: string, token: string, shown: string): Promise<Result<() => Promise<Result<void>>>> {
    const held = await this.check(pad, token);
    if (!held.ok) return held;
    if (held.value.shown !== digest(shown))
      return failed(
        'confirmation-other',
        'The confirmation is for another plan or another image than this; run the command without --confirm and look at it.',
      );
    try {
      await unlink(this.#fileOf(pad));
      return done(() => writeWhole(this.#fileOf(pad), `${JSON.stringify(held.value)}\n`));
    } catch (thrown) {
      const problem = storageProblem(thrown, 'write', this.#fileOf(pad));
      return problem.code === 'file-missing' ? unknown() : { ok: false, problem };
    }
  }

  #fileOf(pad: string): string {
    return path.join(this.#folder, `${digest(pad).slice(0, 24)}.json`);
  }
}

function unknown(): ReturnType<typeof failed> {
  return failed(
    'confirmation-unknown',
    'This confirmation is used or for something else; run the command without --confirm, look at the plan and confirm it.',
  );
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
