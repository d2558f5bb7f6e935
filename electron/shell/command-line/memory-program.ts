/** The `memory` commands: their names, arguments and options. */
import { Argument, Option, type Command } from 'commander';
import { acceptOption } from './accept-option.ts';
import type { Attach } from './image-program.ts';
import type { MemoryChoice } from './memory-pad.ts';
import type { ReadOptions } from './memory-read.ts';
import type { RestoreOptions, WriteOptions } from './memory-write.ts';
import { EXIT } from './terminal.ts';

type Restore = Omit<RestoreOptions, 'image'> & { readonly image?: string; readonly journal?: string };

/** Adds `memory` with its own commands; `attach` gives a command its action. */
export function addMemoryCommands(program: Command, attach: Attach): void {
  const memory = program.command('memory').description("a pad's own memory: read, write, restore, journal");
  const sub = (spec: string, says: string): Command => atPad(memory.command(spec).description(says).exitOverride());
  const map = (): Option => new Option('--map <id>', 'the memory map that the pad must have');
  const confirm = (command: Command): Command =>
    command
      .addOption(new Option('--confirm <token>', 'write what was shown with this confirmation'))
      .addOption(acceptOption());

  attach(sub('read', 'the whole memory, read twice, into an image file'), async (terminal, options: ReadOptions) =>
    (await import('./memory-read.ts')).readMemoryFile(terminal, options),
  )
    .requiredOption('--out <file>', 'the image file to write')
    .addOption(map())
    .option('--force', 'replace the file if it is there already');

  attach(
    sub('allow', 'switches writing to this pad on or off').addArgument(
      new Argument('<which>', 'on or off').choices(['on', 'off']),
    ),
    async (terminal, options: MemoryChoice, which) =>
      (await import('./memory-read.ts')).allowWriting(terminal, options, which),
  );

  confirm(
    attach(
      sub('write <patch>', 'shows what a patch would write; writes it once that is confirmed'),
      async (terminal, options: WriteOptions, patch) =>
        (await import('./memory-write.ts')).writePatch(terminal, patch, options),
    ),
  ).addOption(map());

  confirm(
    attach(
      sub('restore', 'shows what would bring an earlier image back; writes it once that is confirmed'),
      async (terminal, { image, journal, ...options }: Restore) => {
        if (journal !== undefined)
          return (await import('./memory-journal.ts')).restoreJournal(terminal, journal, options);
        if (image !== undefined)
          return (await import('./memory-write.ts')).restoreImage(terminal, { ...options, image });
        terminal.say('stickwright: Give either --journal ID or --image SHA-256.');
        return EXIT.usage;
      },
    ),
  )
    .addOption(new Option('--journal <id>', 'what stood before the write of this journal').conflicts('image'))
    .addOption(new Option('--image <sha256>', 'a kept image, by the beginning of its SHA-256'))
    .addOption(new Option('--whole', 'all of the image, not its calibration alone').conflicts('journal'))
    .addOption(map().conflicts('journal'));

  addJournalCommands(memory, attach, confirm);
}

function addJournalCommands(memory: Command, attach: Attach, confirm: (command: Command) => Command): void {
  const journal = memory.command('journal').description('writes whose end is not known: list, show, finish, dismiss');
  const sub = (spec: string, says: string): Command => journal.command(spec).description(says).exitOverride();

  attach(
    journal.command('list', { isDefault: true }).description('writes that were broken off').exitOverride(),
    async (terminal) => (await import('./memory-journal.ts')).listJournals(terminal),
  );
  attach(
    atPad(sub('show <id>', 'reads the pad and tells what the write left in it')),
    async (terminal, options: MemoryChoice, id) =>
      (await import('./memory-journal.ts')).showJournal(terminal, id, options),
  );
  confirm(
    attach(
      atPad(sub('finish <id>', 'shows what is left to write; writes it once that is confirmed')),
      async (terminal, options: WriteOptions, id) =>
        (await import('./memory-journal.ts')).finishJournal(terminal, id, options),
    ),
  );
  attach(sub('dismiss <id>', 'puts a journal out of the way; its file stays'), async (terminal, _, id) =>
    (await import('./memory-journal.ts')).dismissJournal(terminal, id),
  );
}

function atPad(command: Command): Command {
  return command
    .addOption(new Option('--pad <path>', 'a pad by its path, as `pads` prints it').conflicts('demo'))
    .addOption(new Option('--demo <name>', 'a simulated pad, whose memory is kept in the data folder'))
    .addOption(new Option('--real-time', 'a simulated pad takes as long as a real one would'));
}
