/** `memory journal …` and `memory restore --journal`: writes that were broken off, and what to do about them. */
import { ownerOf } from '../../../core/pad/owner.ts';
import { padMarks } from '../../../core/pad/pad-name.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import type { Bench } from '../../bench/calls/bench-port.ts';
import { padKey } from '../../bench/pads/pad-key.ts';
import { otherPad } from '../../bench/memory/write-refusals.ts';
import { atBareBench } from './command-bench.ts';
import { atMemoryBench, type MemoryBench } from './memory-bench.ts';
import { showOrWrite, tellEnd, whyNotWrite } from './memory-confirm.ts';
import { choicePadOf, type MemoryChoice } from './memory-pad.ts';
import type { MemoryState } from './memory-progress.ts';
import { readAlready, readPad } from './memory-read.ts';
import { showPlanned, type WriteOptions } from './memory-write.ts';
import { outputHead } from './output.ts';
import { drawTable } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** A write by its journal, whether its end is known or not. */
interface KnownWrite {
  readonly isOpen: boolean;
  readonly write: Reply<'journals.list'>[number];
}

export function listJournals(terminal: Terminal): Promise<ExitCode> {
  return atBareBench((bench) => tellJournals(terminal, bench));
}

async function tellJournals(terminal: Terminal, bench: Bench): Promise<ExitCode> {
  const all = await bench.handle('journals.all', {});
  if (!all.ok) return sayProblem(terminal, all.problem);
  const { open, rotted } = all.value;
  for (const { says } of rotted) terminal.say(`stickwright: ${says}`);
  const marks = padMarks(
    open.map(({ identity, unit }) => ({ product: identity.product, pad: ownerOf(identity, unit) })),
  );
  const rows = open.map(({ journal, at, identity, map, changes }, index) => [
    journal,
    at,
    identity.product,
    marks[index] ?? null,
    map,
    changes.length,
  ]);
  const heads = ['journal', 'begun', 'pad', 'serial', 'map', 'changes'].map((head) => ({ head }));
  if (terminal.json) {
    // Which pads are connected is not looked at here.
    const told = open.map((one) => ({ ...one, pad: undefined }));
    await terminal.print(JSON.stringify({ ...outputHead('memory-journals'), journals: told, rotted }));
  } else if (open.length === 0 && rotted.length === 0) terminal.say('No write was broken off.');
  else if (open.length > 0) await terminal.print(drawTable(heads, rows));
  return EXIT.done;
}

export function dismissJournal(terminal: Terminal, journal: string): Promise<ExitCode> {
  return atBareBench(async (bench) => {
    const dismissed = await bench.handle('journals.dismiss', { journal });
    return dismissed.ok ? tellJournals(terminal, bench) : sayProblem(terminal, dismissed.problem);
  });
}

/** Reads the pad and tells what the write left; where that is before or after, the journal is over. */
export function showJournal(terminal: Terminal, id: string, choice: MemoryChoice): Promise<ExitCode> {
  return atJournal(terminal, id, choice, async (bench, { isOpen }) => {
    if (!isOpen) return sayProblem(terminal, notOpen(id).problem);
    const state = await look(bench, id);
    return tellEnd(terminal, bench, state, state.ok ? (state.value.end ?? 'failed') : 'failed');
  });
}

/** Takes a broken write up to its end. */
export function finishJournal(terminal: Terminal, id: string, options: WriteOptions): Promise<ExitCode> {
  const { confirm, accept, ...choice } = options;
  return atJournal(terminal, id, choice, async (bench, { isOpen }) => {
    if (!isOpen) return sayProblem(terminal, notOpen(id).problem);
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const state = await look(bench, id);
    if (!state.ok || state.value.end !== 'differs') return tellEnd(terminal, bench, state, 'after');
    return showOrWrite(terminal, bench, { wish: { finish: id }, sought: 'after' }, { confirm, accept });
  });
}

/** Brings back what stood before a write, broken off or ended. */
export function restoreJournal(terminal: Terminal, id: string, options: WriteOptions): Promise<ExitCode> {
  const { confirm, accept, ...choice } = options;
  return atJournal(terminal, id, choice, async (bench, { isOpen, write }) => {
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const state = isOpen ? await look(bench, id) : null;
    if (state !== null && (!state.ok || state.value.end === 'before')) return tellEnd(terminal, bench, state, 'before');
    if (state?.value.end === 'differs')
      return showOrWrite(terminal, bench, { wish: { restore: id }, sought: 'before' }, { confirm, accept });
    const read = state === null ? await readPad(bench, write.map) : await readAlready(bench);
    if (!read.ok) return sayProblem(terminal, read.problem);
    return showPlanned(terminal, bench, read.value, { undo: id }, { confirm, accept });
  });
}

/** At the pad that was named, else at the one that the journal is of. */
async function atJournal(
  terminal: Terminal,
  id: string,
  choice: MemoryChoice,
  work: (bench: MemoryBench, known: KnownWrite) => Promise<ExitCode>,
): Promise<ExitCode> {
  const known = await atBareBench((bench) => findWrite(bench, id));
  if (!known.ok) return sayProblem(terminal, known.problem);
  const { identity } = known.value.write;
  const isNamed = choice.pad !== undefined || choice.demo !== undefined;
  const found = isNamed ? done(choice) : await choicePadOf(identity);
  if (!found.ok) return sayProblem(terminal, found.problem);
  return atMemoryBench(terminal, { ...choice, ...found.value }, (bench) =>
    bench.key === padKey(identity)
      ? work(bench, known.value)
      : Promise.resolve(sayProblem(terminal, otherPad().problem)),
  );
}

async function findWrite(bench: Bench, id: string): Promise<Result<KnownWrite>> {
  const all = await bench.handle('journals.all', {});
  if (!all.ok) return all;
  const isIts = ({ journal }: { readonly journal: string }): boolean => journal === id;
  const { open, rotted, ended } = all.value;
  const broken = open.find(isIts);
  if (broken !== undefined) return done({ isOpen: true, write: broken });
  const unread = rotted.find(isIts);
  if (unread !== undefined) return failed('journal-rotted', unread.says);
  const over = ended.find(isIts);
  if (over !== undefined) return done({ isOpen: false, write: over });
  return failed(
    'journal-unknown',
    `There is no journal "${id}"; \`stickwright memory journal\` lists those there are.`,
  );
}

function notOpen(id: string): ReturnType<typeof failed> {
  return failed('journal-over', `The write ${id} has ended; \`memory restore --journal ${id}\` undoes it.`);
}

/** Reads the pad and looks at what the write left. */
function look(bench: MemoryBench, journal: string): Promise<Result<MemoryState>> {
  return bench.play(() => bench.handle('memory.show', { pad: bench.pad, journal }));
}
