/** What becomes of a command whose output cannot be written. */
import type { Writable } from 'node:stream';
import { storageProblem } from '../../store/storage-problem.ts';
import { EXIT, type ExitCode } from './terminal.ts';

/**
 * A reader that has seen enough closes the pipe: that is no failure and ends the command with 0. Any other refusal, e.g. of a full
 * disk, is said once in one sentence. Where words for the person cannot be written there is nobody to tell, and the work goes on.
 */
export function guardOutput(results: Writable, words: Writable, end: (code: ExitCode) => void): void {
  words.on('error', () => undefined);
  results.on('error', (error: NodeJS.ErrnoException) => {
    const isClosed = error.code === 'EPIPE';
    if (!isClosed) words.write(`stickwright: ${storageProblem(error, 'write', 'The result').says}\n`);
    end(isClosed ? EXIT.done : EXIT.failed);
  });
}
