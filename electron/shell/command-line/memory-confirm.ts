/** Shows what would be written and asks for a confirmation, or writes what was confirmed. */
import type { AskCode, PatchAsk } from '../../../core/image/ask.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import type { MemoryEnd, MemoryState } from '../../bench/memory-run.ts';
import { notAccepted } from '../../bench/write-refusals.ts';
import { CONFIRMATION_SECONDS } from '../../store/confirmations.ts';
import { sha256Of } from '../../store/vault.ts';
import { PAD, type MemoryBench } from './memory-bench.ts';
import { endText, planText } from './memory-text.ts';
import { outputHead } from './output.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** What is to be written, as the desk is asked for it. */
export interface Wanted {
  readonly wish: Request<'memory.preview'>['wish'];
  /** The same from one run to the next, and for nothing else. */
  readonly of: string;
  /** How it ends when all goes well. */
  readonly sought: MemoryEnd['end'];
}

/** What the person says to what was shown: the confirmation, and each thing asked by its word. */
export interface Word {
  readonly confirm?: string | undefined;
  readonly accept?: readonly AskCode[] | undefined;
}

/** Null where writing may begin: it is switched on, and a confirmation that was given is this pad's and fresh. */
export async function whyNotWrite(bench: MemoryBench, confirm: string | undefined): Promise<Problem | null> {
  const about = await bench.desk.about(PAD);
  if (!about.ok) return about.problem;
  if (about.value.protocol !== null && !about.value.writing)
    return failed(
      'memory-off',
      'Writing to this pad is switched off; `stickwright memory allow on` with the same pad switches it on.',
    ).problem;
  const checked = confirm === undefined ? null : await bench.confirmations.check(bench.key, confirm);
  return checked?.ok === false ? checked.problem : null;
}

/** The memory must have been read at this bench. */
export async function showOrWrite(
  terminal: Terminal,
  bench: MemoryBench,
  { wish, of, sought }: Wanted,
  { confirm, accept = [] }: Word,
): Promise<ExitCode> {
  const preview = await bench.desk.preview({ pad: PAD, wish });
  if (!preview.ok) return sayProblem(terminal, preview.problem);
  const shown = shownText(bench, of, preview.value);
  if (confirm === undefined) return show(terminal, bench, preview.value, shown);
  const open = notAccepted(preview.value.asks, accept);
  if (open !== null) return sayProblem(terminal, withWord(open, preview.value.asks));
  const used = await bench.confirmations.use(bench.key, confirm, shown);
  if (!used.ok) return sayProblem(terminal, used.problem);
  const state = await bench.play(async () => {
    const begun = await bench.desk.write({ pad: PAD, token: preview.value.token, accepts: accept });
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
  sought: MemoryEnd['end'],
): Promise<ExitCode> {
  if (!ended.ok) return sayProblem(terminal, ended.problem);
  const { doing, end, says, image, bytes, retries, problem } = ended.value;
  const about = await bench.desk.about(PAD);
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
  const issued = await bench.confirmations.issue(bench.key, shown);
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
          `Nothing was written. To write exactly this, once, within ${String(CONFIRMATION_SECONDS / 60)} minutes: the same command with ${[`--confirm ${token}`, ...asks.map(acceptOf)].join(' ')}`,
        ].join('\n\n'),
  );
  return EXIT.done;
}

function acceptOf(code: AskCode): string {
  return `--accept ${code}`;
}

/** The same refusal, with the words that it is accepted by. */
function withWord({ code, says }: Problem, asks: readonly PatchAsk[]): Problem {
  return { code, says: `${says} Repeat the command with ${asks.map((ask) => acceptOf(ask.code)).join(' ')}.` };
}

/** All that a confirmation stands for: the pad, what stands in it, what is to be written and in which order. */
function shownText(bench: MemoryBench, of: string, { changes, blocks, asks }: Reply<'memory.preview'>): string {
  const read = bench.desk.imageOf(PAD);
  const memory =
    read === null ? null : { unit: read.unit, map: read.map, bytes: sha256Of(steady(read.bytes, read.map)) };
  return JSON.stringify({ pad: bench.key, memory, of, changes, blocks, asks });
}

/** Without what changes by itself. */
function steady(image: Uint8Array, { volatile }: MemoryMap): Uint8Array {
  const copy = Uint8Array.from(image);
  for (const { offset, length } of volatile) copy.fill(0, offset, offset + length);
  return copy;
}
