/** Keeps every image that was accepted, by what it holds: a file is named by the SHA-256 of its bytes and never changed. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { ownerSchema } from '../../core/pad/owner.ts';
import { done, failed, type Result } from '../../core/result.ts';
import { appendLine } from './append-line.ts';
import { writeWhole } from './atomic-file.ts';
import { makeFolder } from './own-folder.ts';
import { storageProblem } from './storage-problem.ts';
import { sha256Of } from './sha256.ts';

const keptPadSchema = ownerSchema.extend({ product: z.string() });

/** `key` was `1209:000a:serial` with the unit behind it; a serial number may hold colons itself. */
const olderPadSchema = z.object({ key: z.string(), product: z.string() }).transform(({ key, product }, context) => {
  const told = /^([0-9a-f]{4}):([0-9a-f]{4}):(.*?)(?::([0-9a-f]+))?$/u.exec(key);
  if (told === null) {
    context.addIssue({ code: 'custom', message: 'names no pad' });
    return z.NEVER;
  }
  const [, vendor = '', product16 = '', serial = '', unit] = told;
  const ids = { vendorId: Number.parseInt(vendor, 16), productId: Number.parseInt(product16, 16) };
  return { ...ids, serial: serial === '' ? null : serial, unit: unit ?? null, product };
});

const entrySchema = z.object({
  sha256: z.string().regex(/^[0-9a-f]{64}$/u),
  size: z.number().int().min(0),
  /** ISO 8601. */
  at: z.string(),
  why: z.string(),
  map: z.string().nullable(),
  /** The pad that it was read from, where it was read by the program itself. */
  pad: z.union([keptPadSchema, olderPadSchema]).nullable().default(null),
});

/** When and why an image was kept; one image may be kept for many reasons. */
export type VaultEntry = z.infer<typeof entrySchema>;

const INDEX = 'kept.jsonl';

export class Vault {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** The image is on the disk before its entry is; an image that is kept already gets a further entry alone. */
  async keep(
    image: Uint8Array,
    why: string,
    map: string | null,
    now: Date,
    pad: VaultEntry['pad'] = null,
  ): Promise<Result<VaultEntry>> {
    const entry: VaultEntry = { sha256: sha256Of(image), size: image.length, at: now.toISOString(), why, map, pad };
    const file = this.#fileOf(entry.sha256);
    try {
      await makeFolder(path.dirname(file));
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', file) };
    }
    // One that rotted is written anew: what it should hold is in hand.
    const there = await this.read(entry.sha256);
    const written = there.ok ? done(undefined) : await writeWhole(file, image);
    if (!written.ok) return written;
    try {
      await appendLine(path.join(this.#folder, INDEX), entry);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', INDEX) };
    }
    return done(entry);
  }

  /** The image of that digest, proved against it. */
  async read(sha256: string): Promise<Result<Uint8Array>> {
    const file = this.#fileOf(sha256);
    let image: Uint8Array;
    try {
      image = await readFile(file);
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'read', file) };
    }
    if (sha256Of(image) === sha256) return done(image);
    return failed(
      'vault-rotted',
      `The kept image ${sha256.slice(0, 12)} is no longer what it was: its bytes do not give its SHA-256; use another copy.`,
    );
  }

  /** All entries in order of time; lines that cannot be read are passed over, for a line may be cut off. */
  async entries(): Promise<Result<VaultEntry[]>> {
    let text: string;
    try {
      text = await readFile(path.join(this.#folder, INDEX), 'utf8');
    } catch (thrown) {
      const problem = storageProblem(thrown, 'read', INDEX);
      return problem.code === 'file-missing' ? done([]) : { ok: false, problem };
    }
    return done(text.split('\n').flatMap(readEntry));
  }

  #fileOf(sha256: string): string {
    return path.join(this.#folder, sha256.slice(0, 2), `${sha256}.bin`);
  }
}

function readEntry(line: string): VaultEntry[] {
  try {
    const read = entrySchema.safeParse(JSON.parse(line));
    return read.success ? [read.data] : [];
  } catch {
    return [];
  }
}
