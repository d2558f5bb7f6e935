/** What a command writes to: results on standard output, progress and problems on standard error. */
import type { Problem } from '../../../core/result.ts';

export interface Terminal {
  /** One line or a whole table of results. Resolves when more may be written. */
  print(text: string): Promise<void>;
  /** A line for the person at the terminal; never part of the result. */
  say(text: string): void;
  /** Results are to be JSON. */
  readonly json: boolean;
  readonly verbose: boolean;
}

/** Exit codes. */
export const EXIT = { done: 0, failed: 1, usage: 2 } as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

export function processTerminal(options: { readonly json: boolean; readonly verbose: boolean }): Terminal {
  return {
    ...options,
    print(text) {
      return new Promise((resolve) => {
        if (process.stdout.write(`${text}\n`)) resolve();
        else process.stdout.once('drain', resolve);
      });
    },
    say: (text) => void process.stderr.write(`${text}\n`),
  };
}

/** Says why a command failed, in one line. */
export function sayProblem(terminal: Terminal, problem: Problem): ExitCode {
  const place = terminal.verbose ? ` [${problem.code}${problem.at === undefined ? '' : `, at ${problem.at}`}]` : '';
  terminal.say(`stickwright: ${problem.says}${place}`);
  return EXIT.failed;
}
