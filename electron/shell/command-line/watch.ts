/** `watch`: the readings of a pad as they come, or those of a report log as fast as they can be printed. */
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { readHex } from '../../../core/hid/hex.ts';
import type { LogHeader } from '../../../core/log/header.ts';
import { createReadingDecoder } from '../../../core/pad/decode-reading.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { profileById } from '../../../core/pad/profiles.ts';
import { createReadingSlot } from '../../../core/pad/reading-slot.ts';
import type { Problem } from '../../../core/result.ts';
import { readLogHeader, readLogPieces } from '../../transport/log-entries.ts';
import { openLivePad, type PadChoice } from './live-pad.ts';
import { readingLines } from './reading-line.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface WatchOptions extends PadChoice {
  readonly log?: string;
  readonly seconds?: number;
  readonly csv?: boolean;
}

export function watchPad(terminal: Terminal, options: WatchOptions): Promise<ExitCode> {
  return options.log === undefined ? watchLive(terminal, options) : watchLog(terminal, options.log, options);
}

async function watchLog(terminal: Terminal, file: string, options: WatchOptions): Promise<ExitCode> {
  const header = await readLogHeader(file);
  if (!header.ok) return sayProblem(terminal, header.problem);
  const print = printer(layoutOf(header.value), options);
  if (print.head !== null) await terminal.print(print.head);
  for await (const piece of readLogPieces(file)) {
    if (piece.kind === 'problem') return sayProblem(terminal, piece.problem);
    if (piece.kind === 'end') {
      if (piece.cut) terminal.say(`${file} ends inside a line; everything before it was shown.`);
      break;
    }
    const lines = piece.entries.flatMap(({ t, reportId, payload }) =>
      payload === null || t > print.untilMicros ? [] : print.lines(t, reportId, payload),
    );
    if (lines.length > 0) await terminal.print(lines.join('\n'));
    if ((piece.entries.at(-1)?.t ?? 0) > print.untilMicros) break;
  }
  return print.end(terminal);
}

async function watchLive(terminal: Terminal, options: WatchOptions): Promise<ExitCode> {
  const pad = await openLivePad(terminal, options);
  if (!pad.ok) return sayProblem(terminal, pad.problem);
  const { session, close } = pad.value;
  const print = printer(session.layout, options);
  if (print.head !== null) await terminal.print(print.head);
  let first: number | null = null;
  const lost = await new Promise<Problem | null>((resolve) => {
    const timer = options.seconds === undefined ? undefined : setTimeout(() => resolve(null), 1000 * options.seconds);
    process.once('SIGINT', () => resolve(null));
    session.tap({
      report(atMicros, reportId, payload) {
        first ??= atMicros;
        if (atMicros - first <= print.untilMicros)
          for (const line of print.lines(atMicros - first, reportId, payload)) void terminal.print(line);
      },
      gap: () => undefined,
      lost(problem) {
        clearTimeout(timer);
        resolve(problem);
      },
    });
  });
  await close();
  return lost === null ? print.end(terminal) : sayProblem(terminal, lost);
}

/** Turns reports into lines and remembers the first that could not be read. */
function printer(layout: PadLayout, options: WatchOptions) {
  const decoder = createReadingDecoder(layout);
  const slot = createReadingSlot();
  const { head, line } = readingLines(layout, options.csv === true);
  const untilMicros = options.seconds === undefined ? Number.POSITIVE_INFINITY : 1e6 * options.seconds;
  let readings = 0;
  let problem: Problem | null = null;
  return {
    head,
    untilMicros,
    lines: (t: number, reportId: number, payload: Uint8Array): string[] => {
      const read = decoder.read(reportId, payload, slot);
      if (read === 'reading') {
        readings += 1;
        return [line(t, slot)];
      }
      if (read !== 'other') problem ??= read;
      return [];
    },
    end: (terminal: Terminal): ExitCode => {
      if (problem !== null) return sayProblem(terminal, problem);
      if (readings > 0) return EXIT.done;
      const says = layout.noSticks ?? 'No reading came; move a stick, some pads report only what changes.';
      return sayProblem(terminal, { code: 'no-reading', says });
    },
  };
}

/** A log whose descriptor is missing or broken is read by its profile alone. */
function layoutOf(header: LogHeader): PadLayout {
  const bytes = header.descriptor === null ? null : readHex(header.descriptor);
  const descriptor = bytes?.ok === true ? parseDescriptor(bytes.value) : null;
  const profile = header.profile === null ? null : profileById(header.profile);
  return findLayout(descriptor?.ok === true ? descriptor.value : null, profile);
}
