/** Errors that nobody caught, for whoever looks for their cause: a text file of bounded size without the user's name. */
import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { homedir, userInfo } from 'node:os';
import path from 'node:path';

/** The file before this one is kept; together they take twice as much at most, and one entry. */
const MOST_BYTES = 131_072;
const MOST_LETTERS = 8_192;

export interface FaultLog {
  /** `where` says in a few words what failed. Written at once, for the program may not live on; never throws. */
  note(where: string, thrown: unknown): void;
}

export function openFaultLog(folder: string, now: () => Date = () => new Date()): FaultLog {
  const file = path.join(folder, 'faults.log');
  return {
    note(where, thrown) {
      const text = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
      try {
        mkdirSync(folder, { recursive: true, mode: 0o700 });
        if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) >= MOST_BYTES)
          renameSync(file, path.join(folder, 'faults.old.log'));
        const entry = `${now().toISOString()} ${where}: ${withoutNames(text).slice(0, MOST_LETTERS)}\n`;
        appendFileSync(file, entry, { mode: 0o600 });
      } catch (failure) {
        console.error(
          `The error could not be noted in ${path.basename(file)}: ${withoutNames(String(failure))}; check the disk.`,
        );
      }
    },
  };
}

/** Paths of a user's files begin with the home folder, or hold the account's name. */
export function withoutNames(text: string, home: string = homedir(), name: string = accountName()): string {
  const withoutHome = home.length > 1 ? text.replaceAll(home, '~') : text;
  if (name === '') return withoutHome;
  return withoutHome
    .split(/(?<=[/\\])(?=[^/\\])/u)
    .map((part) => hideName(part, name))
    .join('');
}

function hideName(part: string, name: string): string {
  const isIt = part.startsWith(name) && (part.length === name.length || /[/\\]/u.test(part.charAt(name.length)));
  return isIt ? `user${part.slice(name.length)}` : part;
}

function accountName(): string {
  try {
    return userInfo().username;
  } catch {
    return ''; // An account without an entry in the system's list has no name to hide.
  }
}
