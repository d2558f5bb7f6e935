/** `memory journal …` and `memory restore --journal`: writes that were broken off, and what to do about them. */
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import { padMarks } from '../../../core/pad/pad-name.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { journalParts } from '../../bench/memory-parts.ts';
import { otherPad } from '../../bench/journal-desk.ts';
import { padKey } from '../../bench/pad-key.ts';
import type { ReadImage } from '../../bench/write-order.ts';
import { findPlaces } from '../../store/places.ts';
import { Vault } from '../../store/vault.ts';
import { atMemoryBench, PAD, type MemoryBench } from './memory-bench.ts';
import { showOrWrite, tellEnd, whyNotWrite } from './memory-confirm.ts';
import { choicePadOf, type MemoryChoice } from './memory-pad.ts';
import { readPad } from './memory-read.ts';
import { restoreKept, type WriteOptions } from './memory-write.ts';
import { outputHead } from './output.ts';
import { drawTable } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** A write by its journal, whether its end is known or not. */
interface KnownWrite {
  readonly id: string;
  readonly isOpen: boolean;
  readonly identity: PadIdentity;
  /** The image before it. */
  readonly before: string;
  readonly map: string;
  /** What its pad told of itself; undefined where the journal is open, for there the desk looks at it. */
  readonly unit?: string | null;
}

export async function listJournals(terminal: Terminal): Promise<ExitCode> {
  const { journals, store } = parts();
  const open = await journals.list();
  const { rotted } = await store.open();
  for (const { problem } of rotted) terminal.say(`stickwright: ${problem.says}`);
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
    const unread = rotted.map(({ journal, problem }) => ({ journal, says: problem.says }));
    await terminal.print(JSON.stringify({ ...outputHead('memory-journals'), journals: told, rotted: unread }));
  } else if (open.length === 0 && rotted.length === 0) terminal.say('No write was broken off.');
  else if (open.length > 0) await terminal.print(drawTable(heads, rows));
  return EXIT.done;
}

export async function dismissJournal(terminal: Terminal, id: string): Promise<ExitCode> {
  const dismissed = await parts().journals.dismiss(id);
  return dismissed.ok ? listJournals(terminal) : sayProblem(terminal, dismissed.problem);
}

/** Reads the pad and tells what the write left; where that is before or after, the journal is over. */
export function showJournal(terminal: Terminal, id: string, choice: MemoryChoice): Promise<ExitCode> {
  return atJournal(terminal, id, choice, async (bench, { isOpen }) => {
    if (!isOpen) return sayProblem(terminal, notOpen(id).problem);
    const state = await bench.play(() => bench.desk.show(PAD, id));
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
    const state = await bench.play(() => bench.desk.show(PAD, id));
    if (!state.ok || state.value.end !== 'differs') return tellEnd(terminal, bench, state, 'after');
    return showOrWrite(
      terminal,
      bench,
      { wish: { finish: id }, of: `finish ${id}`, sought: 'after' },
      { confirm, accept },
    );
  });
}

/** Brings back what stood before a write, broken off or ended. */
export function restoreJournal(terminal: Terminal, id: string, options: WriteOptions): Promise<ExitCode> {
  const { confirm, accept, ...choice } = options;
  return atJournal(terminal, id, choice, async (bench, { isOpen, before, map, unit }) => {
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const state = isOpen ? await bench.play(() => bench.desk.show(PAD, id)) : null;
    if (state !== null && (!state.ok || state.value.end === 'before')) return tellEnd(terminal, bench, state, 'before');
    if (state?.value.end === 'differs')
      return showOrWrite(
        terminal,
        bench,
        { wish: { restore: id }, of: `restore ${id}`, sought: 'before' },
        { confirm, accept },
      );
    const read = state === null ? await readPad(bench, map) : readAlready(bench);
    if (!read.ok) return sayProblem(terminal, read.problem);
    // Of an open journal it was looked at already.
    if (unit !== undefined && unit !== read.value.unit) return sayProblem(terminal, otherPad().problem);
    const kept = await bench.vault.read(before);
    if (!kept.ok) return sayProblem(terminal, kept.problem);
    // The journal is the proof that this pad held that image.
    const pad = { ...ownerOf(bench.identity, read.value.unit), product: bench.identity.product };
    const noted = await bench.vault.keep(kept.value, `before the write ${id}`, map, new Date(), pad);
    if (!noted.ok) return sayProblem(terminal, noted.problem);
    return restoreKept(terminal, bench, read.value, before, 'whole', { confirm, accept });
  });
}

/** At the pad that was named, else at the one that the journal is of. */
async function atJournal(
  terminal: Terminal,
  id: string,
  choice: MemoryChoice,
  work: (bench: MemoryBench, write: KnownWrite) => Promise<ExitCode>,
): Promise<ExitCode> {
  const write = await findWrite(id);
  if (!write.ok) return sayProblem(terminal, write.problem);
  const isNamed = choice.pad !== undefined || choice.demo !== undefined;
  const found = isNamed ? done(choice) : await choicePadOf(write.value.identity);
  if (!found.ok) return sayProblem(terminal, found.problem);
  return atMemoryBench(terminal, { ...choice, ...found.value }, (bench) =>
    bench.key === padKey(write.value.identity)
      ? work(bench, write.value)
      : Promise.resolve(sayProblem(terminal, otherPad().problem)),
  );
}

async function findWrite(id: string): Promise<Result<KnownWrite>> {
  const { journals, store } = parts();
  const open = (await journals.list()).find(({ journal }) => journal === id);
  if (open !== undefined) return done({ id, isOpen: true, ...open });
  const rotted = (await journals.rotted()).find((one) => one.journal === id);
  if (rotted !== undefined) return { ok: false, problem: rotted.problem };
  const over = (await store.over()).find((one) => one.id === id);
  if (over !== undefined) {
    const { pad, map, before, origin } = over.head;
    const kept = { map: map.id, before: origin?.before ?? before, unit: pad.unit };
    return done({ id, isOpen: false, identity: pad, ...kept });
  }
  return failed(
    'journal-unknown',
    `There is no journal "${id}"; \`stickwright memory journal\` lists those there are.`,
  );
}

function notOpen(id: string): ReturnType<typeof failed> {
  return failed('journal-over', `The write ${id} has ended; \`memory restore --journal ${id}\` undoes it.`);
}

function readAlready(bench: MemoryBench): Result<ReadImage> {
  const read = bench.desk.imageOf(PAD);
  return read === null ? failed('memory-not-read', 'The memory of this pad was not read; try again.') : done(read);
}

function parts(): ReturnType<typeof journalParts> {
  const { data, vault } = findPlaces();
  return journalParts({
    folder: data,
    registry: { padOf: () => null },
    vault: new Vault(vault),
    now: () => new Date(),
  });
}
