/** `stickwright COMMAND …`: machine-readable results on standard output, words for a person on standard error. */
import { guardOutput } from './guard-output.ts';
import { runCommandLine } from './run.ts';

guardOutput(process.stdout, process.stderr, (code) => process.exit(code));

process.exitCode = await runCommandLine(process.argv.slice(2));
