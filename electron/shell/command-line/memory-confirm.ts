/** Shows what would be written and asks for a confirmation, or writes what was confirmed. */
import path from 'node:path';
import type { AskCode } from '../../../core/image/ask.ts';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import { CommandConfirmations, CONFIRMATION_SECONDS } from '../../store/command-confirmations.ts';
import { findPlaces } from '../../store/places.ts';
import type { MemoryBench } from './memory-bench.ts';
import type { MemoryState } from './memory-progress.ts';
import { endText, planText } from './memory-text.ts';
import { outputHead } from './output.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

type End = NonNullable<MemoryState['end']>;

/** What is to be written, as the bench is asked for it. */
export interface Wanted {
  readonly wish: Request<'memory.preview'>['wish'];
  /** The same from one run to the next, and for nothing else; the wish itself where it is left out. */
  readonly of?: object;
  /** How it ends when all goes well. */
  readonly sought: End;
}

/** What the person says to what was shown: the confirmation, and each thing asked by its word. */
export interface Word {
  readonly confirm?: string | undefined;
  readonly accept?: readonly AskCode[] | undefined;
}

/** Null where writing may begin: it is switched on, and a confirmation that was given is this pad's and fresh. */
export async function whyNotWrite(bench: MemoryBench, confirm: string | undefined): Promise<Problem | null> {
  const about = await bench.handle('memory.about', { pad: bench.pad });
  if (!about.ok) return about.problem;
  if (about.value.protocol !== null && !about.value.writing)
    return failed(
      'memory-off',
      'Writing to this pad is switched off; `stickwright memory allow on` with the same pad switches it on.',
    ).problem;
  const checked = confirm === undefined ? null : await confirmations().check(bench.key, confirm);
  return checked?.ok === false ? checked.problem : null;
}

/** The memory must have been read at this bench. A confirmation stands for the pad, what stands in it, and all that was shown. */
export async function showOrWrite(
  terminal: Terminal,
  bench: MemoryBench,
  { wish, of = wish, sought }: Wanted,
  { confirm, accept = [] }: Word,
): Promise<ExitCode> {
  const { pad, key } = bench;
  const preview = await bench.handle('memory.preview', { pad, wish });
  if (!preview.ok) return sayProblem(terminal, preview.problem);
  const { token, memory, changes, blocks, asks } = preview.value;
  const shown = JSON.stringify({ pad: key, memory, of, changes, blocks, asks });
  if (confirm === undefined) return show(terminal, bench, preview.value, shown);
  const open = asks.find(({ code }) => !accept.includes(code));
  if (open !== undefined)
    return sayProblem(terminal, {
      code: 'write-not-accepted',
      says: `${open.says} It must be accepted by itself first. Repeat the command with ${acceptAll(asks)}.`,
    });
  const used = await confirmations().use(key, confirm, shown);
  if (!used.ok) return sayProblem(terminal, used.problem);
  const state = await bench.play(async () => {
    const begun = await bench.handle('memory.write', { pad, token, accepts: accept });
    // Refused before it began: what was confirmed is still to be done.
    if (!begun.ok) await used.value();
    return begun;
  });
  return tellEnd(terminal, bench, state, sought);
}

/** Prints what a session ended with; all but the end that was sought is a failure. */
export async function tellEnd(
  terminal: Terminal,
  bench: MemoryBench,
  ended: Result<MemoryState>,
  sought: End,
): Promise<ExitCode> {
  if (!ended.ok) return sayProblem(terminal, ended.problem);
  const { doing, end, says, image, bytes, retries, problem } = ended.value;
  const about = await bench.handle('memory.about', { pad: bench.pad });
  const journal = about.ok ? (about.value.journal?.journal ?? null) : null;
  const told = { pad: bench.identity, doing, end, image, bytes, retries, journal, problem };
  await terminal.print(terminal.json ? JSON.stringify({ ...outputHead('memory-end'), ...told }) : endText(ended.value));
  if (journal !== null)
    terminal.say(
      `\`stickwright memory restore --journal ${journal}\` brings back what was before; \`memory journal finish\` goes on.`,
    );
  return end === sought ? EXIT.done : sayProblem(terminal, problem ?? { code: `memory-${end ?? 'failed'}`, says });
}

async function show(
  terminal: Terminal,
  bench: MemoryBench,
  preview: Reply<'memory.preview'>,
  shown: string,
): Promise<ExitCode> {
  const issued = await confirmations().issue(bench.key, shown);
  if (!issued.ok) return sayProblem(terminal, issued.problem);
  const { token, until } = issued.value;
  const { changes, blocks, cautions } = preview;
  const asks = preview.asks.map(({ code }) => code);
  const plan = { pad: bench.identity, changes, blocks, cautions, asks, confirm: token, until: until.toISOString() };
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('memory-plan'), ...plan })
      : [
          planText(preview),
          `Nothing was written. To write exactly this, once, within ${String(CONFIRMATION_SECONDS / 60)} minutes: the same command with ${[`--confirm ${token}`, acceptAll(preview.asks)].join(' ').trimEnd()}`,
        ].join('\n\n'),
  );
  return EXIT.done;
}

function acceptAll(asks: Reply<'memory.preview'>['asks']): string {
  return asks.map(({ code }) => `--accept ${code}`).join(' ');
}

/** Those of earlier runs, for each run of a command has a bench of its own. */
function confirmations(): CommandConfirmations {
  return new CommandConfirmations(path.join(findPlaces().data, 'confirmations'), () => new Date());
}
