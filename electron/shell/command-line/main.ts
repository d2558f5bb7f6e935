/** `stickwright COMMAND …`: machine-readable results on standard output, words for a person on standard error. */
import { runCommandLine } from './run.ts';
import { EXIT } from './terminal.ts';

// A reader that has seen enough closes the pipe: that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  throw error;
});

process.exitCode = await runCommandLine(process.argv.slice(2));
