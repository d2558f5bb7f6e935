/** `memory write` and `memory restore`: a patch or a kept image into a pad, shown first and confirmed then. */
import type { AskCode } from '../../../core/image/ask.ts';
import { parsePatch } from '../../../core/image/patch.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import { readJson } from './input-files.ts';
import { atMemoryBench, type MemoryBench } from './memory-bench.ts';
import { showOrWrite, whyNotWrite, type Word } from './memory-confirm.ts';
import type { MemoryChoice } from './memory-pad.ts';
import { readPad, type ReadImage } from './memory-read.ts';
import { sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface WriteOptions extends MemoryChoice {
  readonly map?: string;
  readonly confirm?: string;
  /** Words of what was asked. */
  readonly accept?: readonly AskCode[];
}

export interface RestoreOptions extends WriteOptions {
  readonly image: string;
  readonly whole?: boolean;
}

export async function writePatch(terminal: Terminal, file: string, options: WriteOptions): Promise<ExitCode> {
  const { map: mapId, confirm, accept, ...choice } = options;
  const json = await readJson(file);
  const patch = json.ok ? parsePatch(json.value) : json;
  if (!patch.ok) return sayProblem(terminal, patch.problem);
  return atMemoryBench(terminal, choice, async (bench) => {
    const held = await bench.handle('images.readPatch', { text: JSON.stringify(patch.value) });
    if (!held.ok) return sayProblem(terminal, held.problem);
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const read = await readPad(bench, mapId);
    if (!read.ok) return sayProblem(terminal, read.problem);
    return showOrWrite(terminal, bench, { wish: { plan: held.value.plan }, sought: 'after' }, { confirm, accept });
  });
}

export function restoreImage(terminal: Terminal, options: RestoreOptions): Promise<ExitCode> {
  const { image, whole, map, confirm, accept, ...choice } = options;
  return atMemoryBench(terminal, choice, async (bench) => {
    const target = await findKept(bench, image);
    if (!target.ok) return sayProblem(terminal, target.problem);
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const read = await readPad(bench, map);
    if (!read.ok) return sayProblem(terminal, read.problem);
    const scope = whole === true ? 'whole' : 'calibration';
    const wish = { restore: { image: target.value, scope } } as const;
    return showPlanned(terminal, bench, read.value, wish, { confirm, accept });
  });
}

/** Plans from what was just read, and shows that or writes it. */
export async function showPlanned(
  terminal: Terminal,
  bench: MemoryBench,
  read: ReadImage,
  wish: Request<'images.plan'>['wish'],
  word: Word,
): Promise<ExitCode> {
  const plan = await bench.handle('images.plan', { ...read, wish });
  if (!plan.ok) return sayProblem(terminal, plan.problem);
  return showOrWrite(terminal, bench, { wish: { plan: plan.value.plan }, of: wish, sought: 'after' }, word);
}

/** A kept image by its SHA-256 or the beginning of it, proved against it. */
async function findKept(bench: MemoryBench, image: string): Promise<Result<string>> {
  const listed = await bench.handle('images.list', {});
  if (!listed.ok) return listed;
  const found = listed.value.map((one) => one.image).filter((sha) => sha.startsWith(image));
  const [only] = found;
  if (only === undefined)
    return failed('image-unknown', `No kept image has a SHA-256 that begins with "${image}"; check it.`);
  if (found.length > 1)
    return failed('image-ambiguous', `${String(found.length)} kept images begin with "${image}"; give more of it.`);
  const proved = await bench.handle('images.export', { image: only, from: 0 });
  return proved.ok ? done(only) : proved;
}
