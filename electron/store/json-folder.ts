/** A folder of JSON files that people put there: each is read or named with its fault, and none is ever moved. */
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { done, failed, type Result } from '../../core/result.ts';
import { storageProblem } from './storage-problem.ts';

export interface FolderFile {
  /** The name alone, which is what a person sees; that of the folder where it cannot be listed. */
  readonly name: string;
  readonly read: Result<unknown>;
}

const ENDING = '.json';

/** By name; a folder that is not there holds nothing. */
export async function readJsonFolder(folder: string): Promise<FolderFile[]> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (thrown) {
    const problem = storageProblem(thrown, 'read', folder);
    return problem.code === 'file-missing'
      ? []
      : [{ name: path.basename(folder), read: { ok: false as const, problem } }];
  }
  const files = names.filter((name) => name.endsWith(ENDING)).toSorted();
  return Promise.all(files.map(async (name) => ({ name, read: await readJsonFile(path.join(folder, name)) })));
}

async function readJsonFile(file: string): Promise<Result<unknown>> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'read', file) };
  }
  try {
    return done(JSON.parse(text) as unknown);
  } catch {
    return failed('file-no-json', 'It is not JSON; correct the file or remove it.');
  }
}

/** E.g. "Map file own.json: it is not JSON; correct the file or remove it." */
export function sayFault(what: string, name: string, says: string): string {
  return `${what} ${name}: ${says.charAt(0).toLowerCase()}${says.slice(1)}`;
}
