/** The `image` commands: their names, arguments and options. */
import { Option, type Command } from 'commander';
import { acceptOption } from './accept-option.ts';
import type { FindOptions } from './image-find.ts';
import type { ImageOptions } from './image.ts';
import type { ExitCode, Terminal } from './terminal.ts';

/** Runs what a command does, with its terminal, options and arguments. */
export type Attach = (
  command: Command,
  run: (terminal: Terminal, options: never, ...args: string[]) => Promise<ExitCode>,
) => Command;

/** Adds `image` with its own commands; `attach` gives a command its action. */
export function addImageCommands(program: Command, attach: Attach): void {
  const image = program.command('image').description('memory images: show, plan, apply, compare, find');
  const sub = (spec: string, says: string): Command => image.command(spec).description(says).exitOverride();
  const layer = (): Option => new Option('--layer <name>', 'the layer to plan for').choices(['factory', 'user']);
  const stick = (): Option => new Option('--stick <name>', 'one stick alone').choices(['left', 'right']);

  attach(
    sub('show <image>', 'the layers of an image, and who reads which'),
    async (terminal, options: ImageOptions, file) => (await import('./image.ts')).showImage(terminal, file, options),
  ).option('--map <id>', 'a bundled memory map by its id, or a map file');

  attach(
    sub('plan <image>', 'a patch for an image; nothing is changed'),
    async (terminal, options: ImageOptions, file) => (await import('./image.ts')).planImage(terminal, file, options),
  )
    .option('--map <id>', 'a bundled memory map by its id, or a map file')
    .option('--copy <file>', 'a second reading of the same memory, which must agree')
    .addOption(
      new Option('--carry <from:to>', 'copy one layer to the other')
        .choices(['user:factory', 'factory:user'])
        .conflicts(['layer', 'mapping']),
    )
    .addOption(layer())
    .option('--mapping <file>', 'the mapping to store in the layer')
    .addOption(stick())
    .addOption(acceptOption(['wrong-checksum']))
    .requiredOption('--out <file>', 'the patch file to write')
    .option('--force', 'replace the file if it is there already');

  attach(
    sub('apply <image> <patch>', 'a new image with a patch applied; the input stays as it is'),
    async (terminal, options: ImageOptions, file, patch) =>
      (await import('./image.ts')).applyImage(terminal, file, patch, options),
  )
    .option('--map <id>', 'a map file, where the patch was planned with one')
    .addOption(acceptOption(['wrong-checksum']))
    .requiredOption('--out <file>', 'the image file to write')
    .option('--force', 'replace the file if it is there already');

  attach(
    sub('compare <first> <second>', 'what differs between two images'),
    async (terminal, options: ImageOptions, a, b) => (await import('./image.ts')).compareFiles(terminal, a, b, options),
  ).option('--map <id>', 'a bundled memory map by its id, or a map file');

  attach(
    sub('find <image>', 'where an image may hold a measured calibration'),
    async (terminal, options: FindOptions, file) =>
      (await import('./image-find.ts')).findInImage(terminal, file, options),
  )
    .addOption(new Option('--log <file>', 'a survey of the pad').conflicts('mapping'))
    .option('--mapping <file>', 'typed values as a mapping file');
}
