/** Small files of the bench's own as JSON: written whole or not at all, set aside where they do not parse. */
import { readFile, rename } from 'node:fs/promises';
import writeFileAtomic from 'write-file-atomic';
import type { z } from 'zod';

/** The file's content, or null where there is none. One that does not parse is renamed, so that it is never overwritten. */
export async function readJsonFile<T>(file: string, schema: z.ZodType<T>): Promise<T | null> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return null; // Not there, or not to be read: what it says is worked out again from the log.
  }
  const parsed = schema.safeParse(parseJson(text));
  if (parsed.success) return parsed.data;
  await rename(file, `${file}.set-aside`).catch(() => undefined);
  return null;
}

export async function writeJsonFile(file: string, value: unknown): Promise<void> {
  await writeFileAtomic(file, `${JSON.stringify(value)}\n`);
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
