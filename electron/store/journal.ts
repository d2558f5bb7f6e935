/**
 * Writes to pads whose end is not known yet: one file each, a line for every step, on the disk before the step is taken. What
 * ended goes into a folder of its own and stays.
 */
import { open, readdir, readFile, rename } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import type { JournalStep } from '../../core/image/memory-effects.ts';
import { memoryMapSchema } from '../../core/image/parse-memory-map.ts';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import { changeSchema, imageHandleSchema } from '../../shared/image-schemas.ts';
import { identitySchema } from '../../shared/schemas.ts';
import { appendLine } from './append-line.ts';
import { makeFolder } from './own-folder.ts';
import { storageProblem } from './storage-problem.ts';

const changes = z.array(changeSchema).min(1).readonly();

const headSchema = z.object({
  kind: z.literal('stickwright-memory-journal'),
  version: z.literal(1),
  program: z.string(),
  /** ISO 8601. */
  at: z.string(),
  /** `unit`: bytes that no other pad has, hex; null where its protocol tells none. */
  pad: identitySchema.extend({ unit: z.string().nullable() }),
  protocol: z.string(),
  /** Whole, for a map may be changed meanwhile. */
  map: memoryMapSchema,
  /** SHA-256 of the image that the write began from, which is kept, and of the one that is to come of it. */
  before: imageHandleSchema,
  after: imageHandleSchema,
  changes,
  /** Of a session that takes up what another journal left: that write, and which of its two ends is sought. */
  origin: z
    .object({ before: imageHandleSchema, after: imageHandleSchema, changes, target: z.enum(['before', 'after']) })
    .nullable(),
});

/** An older head has the unit beside the pad. */
export const journalHeadSchema = z.preprocess(withUnit, headSchema);

function withUnit(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('unit' in value) || !('pad' in value)) return value;
  const { unit, pad, ...rest } = value;
  return typeof pad === 'object' && pad !== null && !('unit' in pad) ? { ...rest, pad: { ...pad, unit } } : value;
}

export type JournalHead = z.infer<typeof journalHeadSchema>;

const stepSchema = z.union([
  z.object({ at: z.string(), step: z.enum(['write', 'rollBack']), offset: z.number(), bytes: z.number() }),
  z.object({ at: z.string(), step: z.literal('end'), end: z.enum(['before', 'after']) }),
]);

export type KeptStep = z.infer<typeof stepSchema>;

/** A journal that cannot be understood. */
export interface RottedJournal {
  readonly journal: string;
  readonly problem: Problem;
}

export interface KeptJournal {
  readonly id: string;
  readonly head: JournalHead;
  readonly steps: readonly KeptStep[];
}

const ENDING = '.jsonl';
const OVER = 'over';

export class JournalStore {
  readonly #folder: string;
  readonly #now: () => Date;

  constructor(folder: string, now: () => Date) {
    this.#folder = folder;
    this.#now = now;
  }

  /** Newest first. A journal whose head was cut off announced nothing and is passed over; one that rotted is told. */
  async open(): Promise<{ readonly journals: readonly KeptJournal[]; readonly rotted: readonly RottedJournal[] }> {
    return this.#list(this.#folder);
  }

  /** Those whose end is known. */
  async over(): Promise<readonly KeptJournal[]> {
    return (await this.#list(path.join(this.#folder, OVER))).journals;
  }

  async begin(id: string, head: JournalHead): Promise<Result<void>> {
    const file = this.#fileOf(id);
    try {
      await makeFolder(path.join(this.#folder, OVER));
      await appendLine(file, head, true);
      await syncFolder(this.#folder);
      return done(undefined);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
  }

  async append(id: string, step: Exclude<JournalStep, { step: 'begin' }>): Promise<Result<void>> {
    const file = this.#fileOf(id);
    try {
      await appendLine(file, { at: this.#now().toISOString(), ...step });
      return done(undefined);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
  }

  /** Out of the way of what is open; the file stays. */
  async close(id: string): Promise<Result<void>> {
    const file = this.#fileOf(id);
    try {
      await rename(file, path.join(this.#folder, OVER, `${id}${ENDING}`));
      return done(undefined);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
  }

  async #list(folder: string): Promise<{ journals: KeptJournal[]; rotted: RottedJournal[] }> {
    const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith(ENDING));
    const journals: KeptJournal[] = [];
    const rotted: RottedJournal[] = [];
    for (const name of names.toSorted().toReversed()) {
      const read = parseJournal(name, await readFile(path.join(folder, name), 'utf8').catch(() => ''));
      if (read === null) continue;
      if (read.ok) journals.push(read.value);
      else rotted.push({ journal: idOf(name), problem: read.problem });
    }
    return { journals, rotted };
  }

  #fileOf(id: string): string {
    return path.join(this.#folder, `${id}${ENDING}`);
  }
}

/** A last line that was cut off announced a step that was never taken. Null for a file that holds no whole line. */
export function parseJournal(name: string, text: string): Result<KeptJournal> | null {
  const lines = text.split('\n').slice(0, -1);
  const [first, ...rest] = lines;
  if (first === undefined) return null;
  const head = journalHeadSchema.safeParse(parseLine(first));
  const steps = rest.map((line) => stepSchema.safeParse(parseLine(line)));
  const bad = head.success ? steps.findIndex(({ success }) => !success) + 1 : 0;
  if (!head.success || bad > 0)
    return failed(
      'journal-rotted',
      `The journal ${name} of a write cannot be understood at line ${bad + 1}, so that its pad is not known; look at your pads, restore a kept image where one is wrong, then put the journal aside.`,
    );
  return done({
    id: idOf(name),
    head: head.data,
    steps: steps.flatMap((step) => (step.success ? [step.data] : [])),
  });
}

function idOf(name: string): string {
  return name.slice(0, -ENDING.length);
}

function parseLine(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined; // What no schema takes.
  }
}

/** The name of a new file is on the disk too, where the system lets a folder be synced. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
