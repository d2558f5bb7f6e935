/** Which pads the technician has switched writing on for; off for every other. */
import path from 'node:path';
import { z } from 'zod';
import type { Result } from '../../core/result.ts';
import { readJson, writeWhole } from './atomic-file.ts';
import { makeFolder } from './own-folder.ts';
import { storageProblem } from './storage-problem.ts';

const fileSchema = z.object({
  kind: z.literal('stickwright-writable-pads'),
  version: z.literal(1),
  pads: z.array(z.string()),
});

export class WriteSwitch {
  readonly #file: string;
  readonly #now: () => Date;

  constructor(file: string, now: () => Date) {
    this.#file = file;
    this.#now = now;
  }

  /** `key` names the pad. */
  async isOn(key: string): Promise<boolean> {
    return (await this.#read()).includes(key);
  }

  async set(key: string, on: boolean): Promise<Result<void>> {
    const others = (await this.#read()).filter((one) => one !== key);
    const pads = on ? [...others, key] : others;
    try {
      await makeFolder(path.dirname(this.#file));
    } catch (thrown) {
      return { ok: false, problem: storageProblem(thrown, 'write', this.#file) };
    }
    return writeWhole(this.#file, `${JSON.stringify({ kind: 'stickwright-writable-pads', version: 1, pads })}\n`);
  }

  /** A file that cannot be read switches nothing on. */
  async #read(): Promise<readonly string[]> {
    const read = await readJson(this.#file, fileSchema, this.#now());
    return read.kind === 'read' ? read.value.pads : [];
  }
}
