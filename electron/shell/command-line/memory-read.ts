/** `memory read` and `memory allow`: an image of a pad's memory as a file, and the switch that writing waits for. */
import { imageTable } from '../../../core/image/image-table.ts';
import { row } from '../../../core/measure/table.ts';
import { tellingSerial } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { atMemoryBench, type MemoryBench } from './memory-bench.ts';
import type { MemoryChoice } from './memory-pad.ts';
import { refuseOverwrite, writeOutput } from './output-files.ts';
import { outputHead } from './output.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

/** What was read last: the kept image and the map that it was read under. */
export interface ReadImage {
  readonly image: string;
  readonly map: string;
}

export interface ReadOptions extends MemoryChoice {
  readonly out: string;
  readonly map?: string;
  readonly force?: boolean;
}

export function readMemoryFile(terminal: Terminal, { out, map, force, ...choice }: ReadOptions): Promise<ExitCode> {
  const refusal = refuseOverwrite(out, force === true);
  if (refusal !== null) return Promise.resolve(sayProblem(terminal, refusal));
  return atMemoryBench(terminal, choice, async (bench) => {
    const read = await readPad(bench, map);
    if (!read.ok) return sayProblem(terminal, read.problem);
    const { image: sha256, map: under } = read.value;
    const opened = await bench.handle('images.open', read.value);
    if (!opened.ok) return sayProblem(terminal, opened.problem);
    const exported = await exportImage(bench, sha256);
    if (!exported.ok) return sayProblem(terminal, exported.problem);
    const bytes = exported.value;
    const written = await writeOutput(out, bytes, force === true);
    if (!written.ok) return sayProblem(terminal, written.problem);
    const file = [row('file', out), row('bytes', String(bytes.length)), row('SHA-256', sha256), row('map', under)];
    const sections = [{ title: 'image', rows: file }, ...imageTable(opened.value.layers, opened.value.hosts)];
    const told = { pad: bench.identity, out, sha256, size: bytes.length, map: under };
    await terminal.print(
      terminal.json ? JSON.stringify({ ...outputHead('memory-read'), ...told }) : drawSections(sections),
    );
    return EXIT.done;
  });
}

/** Reads the whole memory twice and keeps it; `map` is the id of the map that the pad is to have. */
export async function readPad(bench: MemoryBench, map: string | undefined): Promise<Result<ReadImage>> {
  const known = map === undefined ? null : await knownMap(bench, map);
  if (known?.ok === false) return known;
  const ended = await bench.play(() => bench.handle('memory.read', { pad: bench.pad }));
  if (!ended.ok) return ended;
  const read = await readAlready(bench);
  if (!read.ok || map === undefined || map === read.value.map) return read;
  return failed('map-other', `This pad's memory has the map ${read.value.map}, not ${map}; give that one, or none.`);
}

export async function readAlready(bench: MemoryBench): Promise<Result<ReadImage>> {
  const about = await bench.handle('memory.about', { pad: bench.pad });
  if (!about.ok) return about;
  const { image, map } = about.value;
  if (image !== null && map !== null) return done({ image, map });
  return failed('memory-not-read', 'The memory of this pad was not read; try again.');
}

/** A file that is to be put right may hold the map. */
async function knownMap(bench: MemoryBench, id: string): Promise<Result<void>> {
  const listed = await bench.handle('maps.list', {});
  if (!listed.ok) return listed;
  const { maps, problems } = listed.value;
  if (maps.some(({ map }) => map.id === id)) return done(undefined);
  const [faulty] = problems;
  return faulty === undefined
    ? failed('map-unknown', `There is no memory map "${id}"; choose one from the list or add its file.`)
    : failed('map-file', faulty.says);
}

async function exportImage(bench: MemoryBench, image: string): Promise<Result<Uint8Array>> {
  const pieces: Uint8Array[] = [];
  for (let from: number | null = 0; from !== null;) {
    const piece: Result<Reply<'images.export'>> = await bench.handle('images.export', { image, from });
    if (!piece.ok) return piece;
    pieces.push(Buffer.from(piece.value.piece, 'base64'));
    from = piece.value.next;
  }
  return done(Buffer.concat(pieces));
}

export function allowWriting(terminal: Terminal, choice: MemoryChoice, which: string): Promise<ExitCode> {
  return atMemoryBench(terminal, choice, async (bench) => {
    const isOn = which === 'on';
    if (isOn && tellingSerial(bench.identity.serial) === null)
      return sayProblem(
        terminal,
        failed(
          'pad-no-serial',
          'This pad has no serial number and cannot be told from its like once this command ends; write to it from the app.',
        ).problem,
      );
    const about = await bench.handle('memory.allow', { pad: bench.pad, writing: isOn });
    if (!about.ok) return sayProblem(terminal, about.problem);
    const { writing, cautions } = about.value;
    const says = `Writing to ${bench.identity.product} is switched ${writing ? 'on' : 'off'}.`;
    const lines = [says, ...(writing ? cautions : [])];
    await terminal.print(
      terminal.json
        ? JSON.stringify({ ...outputHead('memory-allow'), pad: bench.identity, writing, cautions })
        : lines.join('\n'),
    );
    return EXIT.done;
  });
}
