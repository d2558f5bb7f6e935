/** Runs one command and says with which code to end. */
import { CommanderError } from 'commander';
import { findPlaces } from '../../store/places.ts';
import { tighten } from '../../store/tighten.ts';
import { buildProgram } from './program.ts';
import { EXIT, type ExitCode } from './terminal.ts';

export async function runCommandLine(args: readonly string[]): Promise<ExitCode> {
  let code: ExitCode = EXIT.done;
  const program = buildProgram((ended) => (code = ended));
  try {
    const open = await tighten(findPlaces());
    if (open !== null) process.stderr.write(`stickwright: ${open.says}\n`);
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (thrown) {
    if (thrown instanceof CommanderError) return thrown.exitCode === 0 ? EXIT.done : EXIT.usage;
    const verbose = args.includes('--verbose');
    const words = thrown instanceof Error ? ((verbose ? thrown.stack : undefined) ?? thrown.message) : String(thrown);
    process.stderr.write(`stickwright: The command broke off (${words}); --verbose says where.\n`);
    return EXIT.failed;
  }
}
