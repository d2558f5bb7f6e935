/** The commands with their arguments and options; what they do stands in a file each, loaded when it is asked for. */
import { Command, InvalidArgumentError, Option } from 'commander';
import type { InputForm } from '../../../core/hid/read-input.ts';
import { GATE_SOURCES } from './gate-words.ts';
import type { TermsOptions } from './log-input.ts';
import type { MeasureOptions } from './measure.ts';
import type { ProposeOptions } from './propose.ts';
import { addImageCommands } from './image-program.ts';
import { addMemoryCommands } from './memory-program.ts';
import type { ConsumersOptions } from './consumers.ts';
import { DEFAULT_STEPS, STEPS_TEXT } from './survey-steps.ts';
import type { SelfCheckOptions } from './self-check.ts';
import type { SurveyOptions } from './survey.ts';
import { processTerminal, type ExitCode, type Terminal } from './terminal.ts';
import type { WatchOptions } from './watch.ts';
import type { ZonesOptions } from './zones.ts';

interface Shared {
  readonly json?: boolean;
  readonly verbose?: boolean;
}

/** What a command does, given its options and its one argument. */
type Run = (terminal: Terminal, options: never, argument: string) => Promise<ExitCode>;

/** `ended` hears the exit code of the command that ran. */
export function buildProgram(ended: (code: ExitCode) => void): Command {
  const program = new Command('stickwright')
    .description('Measures the analog sticks of a gamepad, proposes their calibration and answers for dead zones.')
    .option('--json', 'results as JSON on standard output')
    .option('--verbose', 'say more where something fails')
    .helpOption('-h, --help', 'what a command takes')
    .helpCommand(false)
    .exitOverride()
    .showHelpAfterError('(stickwright COMMAND --help says what a command takes)');

  /** Adds a command; --json and --verbose may stand before or after its name. */
  function add(spec: string, says: string, run: Run): Command {
    return attach(program.command(spec).description(says), (terminal, options, argument) =>
      run(terminal, options, argument),
    );
  }

  function attach(
    command: Command,
    run: (terminal: Terminal, options: never, ...args: string[]) => Promise<ExitCode>,
  ): Command {
    return command.action(async (...given: unknown[]) => {
      const ran = given.pop() as Command;
      const options = given.pop() as never;
      const { json = false, verbose = false } = ran.optsWithGlobals<Shared>();
      ended(await run(processTerminal({ json, verbose }), options, ...given.map(String)));
    });
  }

  add('pads', 'connected HID pads, and why any cannot be opened', async (terminal) =>
    (await import('./pads.ts')).showPads(terminal),
  );

  add('watch', 'readings of a pad, one JSON object a line', async (terminal, options: WatchOptions) =>
    (await import('./watch.ts')).watchPad(terminal, options),
  )
    .addOption(new Option('--pad <path>', 'a pad by its path, as `pads` prints it').conflicts(['demo', 'log']))
    .addOption(new Option('--demo <name>', 'a simulated pad').conflicts(['pad', 'log']))
    .addOption(new Option('--log <file>', 'a report log, replayed as fast as possible').conflicts(['pad', 'demo']))
    .option('--seconds <n>', 'stop after so many seconds', positive)
    .option('--seed <n>', 'another simulated pad of that kind, made anew', whole)
    .option('--csv', 'columns instead of JSON');

  withByteForm(
    add(
      'descriptor <file>',
      'a report descriptor (hex text or bytes; - for standard input) as its fields',
      async (terminal, options: ByteOptions, file) =>
        (await import('./descriptor.ts')).showDescriptor(terminal, file, formOf(options)),
    ),
  );

  withByteForm(
    add(
      'decode <file>',
      'reports (hex, one a line; - for standard input) as the values of their fields',
      async (terminal, options: ByteOptions & { descriptor: string }, file) =>
        (await import('./decode.ts')).decodeReports(terminal, file, {
          descriptor: options.descriptor,
          form: formOf(options),
        }),
    ).requiredOption('--descriptor <file>', 'the report descriptor of the pad'),
  );

  add(
    'survey',
    'a guided survey of each stick and of the inputs, into a report log',
    async (terminal, options: SurveyOptions) => (await import('./survey.ts')).surveyPad(terminal, options),
  )
    .addOption(new Option('--demo <name>', 'a simulated pad, its sticks driven').conflicts('pad'))
    .addOption(new Option('--pad <path>', 'a pad by its path, prompted step by step').conflicts('demo'))
    .requiredOption('--out <log>', 'the report log to write')
    .addOption(
      new Option('--stage <stage>', 'stage of the job').choices(['received', 'fitted', 'calibrated', 'recheck']),
    )
    .addOption(new Option('--stick <stick>', 'one stick alone').choices(['left', 'right']))
    .option('--releases <n>', 'releases asked for', within(1, 200), 24)
    .option('--turns <n>', 'turns each way asked for', within(1, 20), 3)
    .option('--steps <list>', `what is taken: ${STEPS_TEXT}`, DEFAULT_STEPS)
    .option('--sweeps <n>', 'slow sweeps toward each of four directions; as many as needed else', within(1, 10))
    .option('--flicks <n>', 'let-gos from full tilt in each of four directions', within(1, 10), 2)
    .option('--button <n>', 'the pad button that confirms', within(1, 128))
    .option('--seed <n>', 'another simulated pad of that kind, made anew', whole)
    .option('--force', 'replace the log if it is there already');

  add('measure <log>', 'rest and rim of every stick of a report log', async (terminal, options: MeasureOptions, log) =>
    (await import('./measure.ts')).measureFile(terminal, log, options),
  )
    .option('--mapping <file>', 'the mapping that deflections are under')
    .option('--limits <file>', 'limits of your own, which beat the settings')
    .option('--gate-from <log>', 'a survey in the same shell that tells of the gate')
    .addOption(new Option('--gate-as <what>', 'what that survey was of').choices(Object.keys(GATE_SOURCES)));

  add(
    'propose <log>',
    'a mapping for a stated aim, with what it will do',
    async (terminal, options: ProposeOptions, log) =>
      (await import('./propose.ts')).proposeForFile(terminal, log, options),
  )
    .addOption(
      new Option('--aim <aim>', 'what the mapping is for')
        .choices(['full-reach', 'even', 'edges'])
        .default('full-reach'),
    )
    .addOption(
      new Option('--centre <choice>', 'how the centre is chosen').choices(['steadiest', 'mean']).default('steadiest'),
    )
    .option('--guard <fraction>', 'how much more than full output is to be reached', guard, 0.01)
    .option('--mapping <file>', 'the mapping that is in force now')
    .option('--limits <file>', 'limits of your own, which beat the settings')
    .option('--out <file>', 'write the mapping alone to a file')
    .option('--force', 'replace the file if it is there already');

  add('zones <log>', 'leaks, onset and reach of a chain of dead zones', async (terminal, options: ZonesOptions, log) =>
    (await import('./zones.ts')).answerForFile(terminal, log, options),
  )
    .requiredOption('--chain <file>', 'the chain of zones')
    .option('--mapping <file>', 'the mapping that deflections are under')
    .option('--limits <file>', 'limits of your own, which beat the settings');

  add(
    'consumers <log>',
    'what games and drivers make of each stick',
    async (terminal, options: ConsumersOptions, log) =>
      (await import('./consumers.ts')).judgeForFile(terminal, log, options),
  )
    .option('--consumer <file...>', 'consumer files in place of the published rules')
    .option('--driver <file>', 'the chain of the driver between pad and consumers')
    .option('--mapping <file>', 'the mapping that deflections are under')
    .option('--limits <file>', 'limits of your own, which beat the settings');

  attach(
    program.command('compare <first> <second>').description('what changed between two surveys of one pad'),
    async (terminal, options: TermsOptions, first, second) =>
      (await import('./compare.ts')).compareLogs(terminal, options, first, second),
  )
    .option('--mapping <file>', 'the mapping that both are looked at under')
    .option('--limits <file>', 'limits of your own, which beat the settings');

  add('self-check', 'measures a simulated pad whose truth is known', async (terminal, options: SelfCheckOptions) =>
    (await import('./self-check.ts')).checkSelf(terminal, options),
  ).option('--seed <n>', 'chance of the simulated pad', whole, 1);

  addImageCommands(program, attach);
  addMemoryCommands(program, attach);
  return program;
}

interface ByteOptions {
  readonly hex?: boolean;
  readonly bytes?: boolean;
}

function withByteForm(command: Command): Command {
  return command
    .addOption(new Option('--hex', 'the descriptor is hex text').conflicts('bytes'))
    .addOption(new Option('--bytes', 'the descriptor is bytes').conflicts('hex'));
}

function formOf({ hex = false, bytes = false }: ByteOptions): InputForm {
  if (hex) return 'hex';
  return bytes ? 'bytes' : 'auto';
}

function numberOf(text: string): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(value)) throw new InvalidArgumentError('It must be a number.');
  return value;
}

function positive(text: string): number {
  const value = numberOf(text);
  if (value <= 0) throw new InvalidArgumentError('It must be more than 0.');
  return value;
}

function whole(text: string): number {
  const value = numberOf(text);
  if (!Number.isSafeInteger(value) || value < 0) throw new InvalidArgumentError('It must be a whole number from 0 on.');
  return value;
}

function within(least: number, greatest: number): (text: string) => number {
  return (text) => {
    const value = numberOf(text);
    if (!Number.isInteger(value) || value < least || value > greatest)
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${greatest}.`);
    return value;
  };
}

function guard(text: string): number {
  const value = numberOf(text);
  if (value < 0 || value > 0.5) throw new InvalidArgumentError('It must be a fraction from 0 to 0.5.');
  return value;
}
