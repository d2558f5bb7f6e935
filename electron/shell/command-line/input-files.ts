/** Reads what a command is given: a file or standard input. */
import { readFile } from 'node:fs/promises';
import { buffer } from 'node:stream/consumers';
import { done, failed, type Result } from '../../../core/result.ts';
import { storageProblem } from '../../store/storage-problem.ts';

/** The bytes of a file, or of standard input for `-`. */
export async function readInput(name: string): Promise<Result<Uint8Array>> {
  try {
    return done(name === '-' ? await buffer(process.stdin) : await readFile(name));
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'read', name) };
  }
}

/** A file as JSON; what it must hold is for the caller to check. */
export async function readJson(name: string): Promise<Result<unknown>> {
  const bytes = await readInput(name);
  if (!bytes.ok) return bytes;
  try {
    return done(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value)) as unknown);
  } catch {
    return failed('file-not-json', `${name} is not JSON; check that it is the file you meant.`);
  }
}
