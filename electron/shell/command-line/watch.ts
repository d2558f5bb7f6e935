/** `watch`: the readings of a pad as they come, or those of a report log as fast as they can be printed. */
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { sayDamaged } from '../../../core/log/damaged-lines.ts';
import type { LogHeader } from '../../../core/log/header.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import type { PadLayout } from '../../../core/pad/layout.ts';
import { profileById } from '../../../core/pad/profiles.ts';
import type { Problem } from '../../../core/result.ts';
import type { PadSession } from '../../bench/pads/pad-session.ts';
import { readLogHeader, readLogPieces } from '../../store/log-entries.ts';
import { LineQueue } from './line-queue.ts';
import { openLivePad, type PadChoice } from './live-pad.ts';
import { ReadingPrinter } from './reading-printer.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface WatchOptions extends PadChoice {
  readonly log?: string;
  readonly seconds?: number;
  readonly csv?: boolean;
}

/** Reports stamped in time may be told a little later. */
const LATE_MILLIS = 250;

export function watchPad(terminal: Terminal, options: WatchOptions): Promise<ExitCode> {
  return options.log === undefined ? watchLive(terminal, options) : watchLog(terminal, options.log, options);
}

async function watchLog(terminal: Terminal, file: string, options: WatchOptions): Promise<ExitCode> {
  const header = await readLogHeader(file);
  if (!header.ok) return sayProblem(terminal, header.problem);
  const printer = new ReadingPrinter(layoutFinder(header.value), options.csv === true);
  const until = untilMicros(options);
  for await (const piece of readLogPieces(file)) {
    if (piece.kind === 'problem') return sayProblem(terminal, piece.problem);
    if (piece.kind === 'end') {
      if (piece.cut) terminal.say(`${file} ends inside a line; everything before it was shown.`);
      const damaged = sayDamaged(piece.damaged);
      if (damaged !== null) terminal.say(damaged);
      break;
    }
    const lines = piece.entries.flatMap(({ t, reportId, payload }) =>
      payload === null || t > until ? [] : printer.lines(t, reportId, payload),
    );
    if (lines.length > 0) await terminal.print(lines.join('\n'));
    if ((piece.entries.at(-1)?.t ?? 0) > until) break;
  }
  return ending(terminal, printer.problem);
}

async function watchLive(terminal: Terminal, options: WatchOptions): Promise<ExitCode> {
  const pad = await openLivePad(terminal, options);
  if (!pad.ok) return sayProblem(terminal, pad.problem);
  const { session, close } = pad.value;
  const printer = new ReadingPrinter(() => session.layout, options.csv === true);
  const queue = new LineQueue((text) => terminal.print(text));
  const lost = await untilOver(queue, session, printer, untilMicros(options));
  await close();
  await queue.end();
  if (queue.left > 0) terminal.say(`${queue.left} lines were left out, for they were not read fast enough.`);
  return ending(terminal, lost ?? printer.problem);
}

/** Until a reading beyond the time asked for, an interrupt, or the loss of the pad; a silent pad is not waited for. */
function untilOver(
  queue: LineQueue,
  session: PadSession,
  printer: ReadingPrinter,
  until: number,
): Promise<Problem | null> {
  return new Promise((resolve) => {
    let first: number | null = null;
    const timer = Number.isFinite(until) ? setTimeout(() => over(null), until / 1000 + LATE_MILLIS) : undefined;
    const interrupt = (): void => over(null);
    const end = session.tap({
      report(atMicros, reportId, payload) {
        first ??= atMicros;
        if (atMicros - first > until) over(null);
        else queue.push(printer.lines(atMicros - first, reportId, payload));
      },
      gap: () => undefined,
      lost: (problem) => over(problem),
    });
    function over(problem: Problem | null): void {
      end();
      clearTimeout(timer);
      process.off('SIGINT', interrupt);
      resolve(problem);
    }
    process.once('SIGINT', interrupt);
  });
}

function untilMicros({ seconds }: WatchOptions): number {
  return seconds === undefined ? Number.POSITIVE_INFINITY : 1e6 * seconds;
}

function ending(terminal: Terminal, problem: Problem | null): ExitCode {
  return problem === null ? EXIT.done : sayProblem(terminal, problem);
}

/** A log whose descriptor is missing or broken is read by its profile alone. */
function layoutFinder(header: LogHeader): (arriving: ReadonlySet<number> | null) => PadLayout {
  const bytes = header.descriptor === null ? null : readHex(header.descriptor);
  const parsed = bytes?.ok === true ? parseDescriptor(bytes.value) : null;
  const profile = header.profile === null ? null : profileById(header.profile);
  return (arriving) => findLayout(parsed?.ok === true ? parsed.value : null, profile, arriving);
}
