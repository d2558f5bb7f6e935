/** `decode --descriptor FILE FILE | -`: reports as hex, one a line, to the values of their fields, one JSON object a line. */
import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { ByteForm } from './descriptor-input.ts';
import { readDescriptor } from './descriptor-input.ts';
import { reportDecoder } from './decoded-line.ts';
import { sayUnreadable } from './input-files.ts';
import { outputHead } from './output.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** A report that cannot be decoded gets a line of its own, the run goes on and ends with 1. */
export async function decodeReports(
  terminal: Terminal,
  file: string,
  options: { readonly descriptor: string; readonly form: ByteForm },
): Promise<ExitCode> {
  if (file === '-' && options.descriptor === '-') {
    terminal.say('stickwright: Descriptor and reports cannot both come from standard input; give a file for one.');
    return EXIT.usage;
  }
  const descriptor = await readDescriptor(options.descriptor, options.form);
  if (!descriptor.ok) return sayProblem(terminal, descriptor.problem);
  const decode = reportDecoder(descriptor.value);
  const input = file === '-' ? process.stdin : createReadStream(file);
  let failures = 0;
  try {
    for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      if (line.trim() === '') continue;
      const decoded = decode(line);
      if (!decoded.ok) failures += 1;
      const { ok } = decoded;
      const object = ok
        ? decoded.value
        : { ...outputHead('decoded-report'), error: decoded.problem.says, hex: line.trim() };
      await terminal.print(JSON.stringify(object));
    }
  } catch (thrown) {
    return sayProblem(terminal, { code: 'file-unreadable', says: sayUnreadable(file, thrown) });
  }
  if (failures > 0) terminal.say(`stickwright: ${failures} of the reports could not be decoded; their lines say why.`);
  return failures > 0 ? EXIT.failed : EXIT.done;
}
