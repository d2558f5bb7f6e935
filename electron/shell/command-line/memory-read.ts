/** `memory read` and `memory allow`: an image of a pad's memory as a file, and the switch that writing waits for. */
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import { imageTable } from '../../../core/image/image-table.ts';
import { whoReads } from '../../../core/image/who-reads.ts';
import { row } from '../../../core/measure/table.ts';
import { tellingSerial } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { ReadImage } from '../../bench/write-order.ts';
import { atMemoryBench, PAD, type MemoryBench } from './memory-bench.ts';
import type { MemoryChoice } from './memory-pad.ts';
import { refuseOverwrite, writeOutput } from './output-files.ts';
import { outputHead } from './output.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

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
    const { bytes, image: sha256, map: under } = read.value;
    const written = await writeOutput(out, bytes, force === true);
    if (!written.ok) return sayProblem(terminal, written.problem);
    const layers = decodeLayers(bytes, under);
    const file = [row('file', out), row('bytes', String(bytes.length)), row('SHA-256', sha256), row('map', under.id)];
    const sections = [{ title: 'image', rows: file }, ...imageTable(layers, whoReads(layers, under))];
    const told = { pad: bench.identity, out, sha256, size: bytes.length, map: under.id };
    await terminal.print(
      terminal.json ? JSON.stringify({ ...outputHead('memory-read'), ...told }) : drawSections(sections),
    );
    return EXIT.done;
  });
}

/** Reads the whole memory twice and keeps it; `map` is the id of the map that the pad is to have. */
export async function readPad(bench: MemoryBench, map: string | undefined): Promise<Result<ReadImage>> {
  const known = map === undefined ? null : await bench.maps.find(map);
  if (known?.ok === false) return known;
  const ended = await bench.play(() => bench.desk.read(PAD));
  if (!ended.ok) return ended;
  const read = bench.desk.imageOf(PAD);
  if (read === null) return failed('memory-not-read', 'The memory of this pad was not read; try again.');
  if (map === undefined || map === read.map.id) return done(read);
  return failed('map-other', `This pad's memory has the map ${read.map.id}, not ${map}; give that one, or none.`);
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
    const about = await bench.desk.allow(PAD, isOn);
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
