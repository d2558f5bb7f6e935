/** `decode --descriptor FILE FILE | -`: reports as hex, one a line, to the values of their fields, one JSON object a line. */
import { open } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { createReportDescriber } from '../../../core/hid/describe-report.ts';
import { readDescriptor } from './descriptor-input.ts';
import type { InputForm } from '../../../core/hid/read-input.ts';
import { storageProblem } from '../../store/storage-problem.ts';
import { outputHead } from './output.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** A report that cannot be decoded gets a line of its own, the run goes on and ends with 1. */
export async function decodeReports(
  terminal: Terminal,
  file: string,
  options: { readonly descriptor: string; readonly form: InputForm },
): Promise<ExitCode> {
  if (file === '-' && options.descriptor === '-') {
    terminal.say('stickwright: Descriptor and reports cannot both come from standard input; give a file for one.');
    return EXIT.usage;
  }
  const descriptor = await readDescriptor(options.descriptor, options.form);
  if (!descriptor.ok) return sayProblem(terminal, descriptor.problem);
  const describer = createReportDescriber(descriptor.value);
  let failures = 0;
  async function printReport(hex: string): Promise<void> {
    const described = describer.describeHex(hex);
    if (!described.ok) failures += 1;
    const line = described.ok ? described.value : { error: described.problem.says, hex: hex.trim() };
    await terminal.print(JSON.stringify({ ...outputHead('decoded-report'), ...line }));
  }
  try {
    for await (const hex of reportLines(file)) await printReport(hex);
  } catch (thrown) {
    return sayProblem(terminal, storageProblem(thrown, 'read', file));
  }
  if (failures > 0) terminal.say(`stickwright: ${failures} of the reports could not be decoded; their lines say why.`);
  return failures > 0 ? EXIT.failed : EXIT.done;
}

/** Blank lines at the end are no reports; one before another report, or alone, is a report of 0 bytes. */
async function* reportLines(file: string): AsyncGenerator<string> {
  const input = file === '-' ? process.stdin : await openToRead(file);
  let blank = 0;
  let any = false;
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (line.trim() === '') {
      blank += 1;
      continue;
    }
    for (; blank > 0; blank -= 1) yield '';
    any = true;
    yield line;
  }
  if (!any && blank > 0) yield '';
}

/** Readline passes no error of its input on: the file is opened first. */
async function openToRead(file: string): Promise<NodeJS.ReadableStream> {
  return (await open(file)).createReadStream();
}
