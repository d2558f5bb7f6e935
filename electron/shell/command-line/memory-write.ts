/** `memory write` and `memory restore`: a patch or a kept image into a pad, shown first and confirmed then. */
import type { AskCode } from '../../../core/image/ask.ts';
import { parsePatch } from '../../../core/image/patch.ts';
import type { RestoreScope } from '../../../core/image/plan-restore.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { ReadImage } from '../../bench/write-order.ts';
import { sha256Of } from '../../store/vault.ts';
import { readJson } from './input-files.ts';
import { atMemoryBench, type MemoryBench } from './memory-bench.ts';
import { showOrWrite, whyNotWrite, type Word } from './memory-confirm.ts';
import type { MemoryChoice } from './memory-pad.ts';
import { readPad } from './memory-read.ts';
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
    const map = await bench.maps.find(patch.value.map);
    if (!map.ok) return sayProblem(terminal, map.problem);
    const shut = await whyNotWrite(bench, confirm);
    if (shut !== null) return sayProblem(terminal, shut);
    const read = await readPad(bench, mapId);
    if (!read.ok) return sayProblem(terminal, read.problem);
    const { plan } = bench.plans.hold(patch.value, map.value, 'file', []);
    const of = `write ${sha256Of(new TextEncoder().encode(JSON.stringify(patch.value)))}`;
    return showOrWrite(terminal, bench, { wish: { plan }, of, sought: 'after' }, { confirm, accept });
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
    return restoreKept(terminal, bench, read.value, target.value, scope, { confirm, accept });
  });
}

/** Plans from what was just read to the kept image, and shows that or writes it. */
export async function restoreKept(
  terminal: Terminal,
  bench: MemoryBench,
  read: ReadImage,
  target: string,
  scope: RestoreScope,
  word: Word,
): Promise<ExitCode> {
  const wish = { restore: { image: target, scope } };
  const plan = await bench.images.plan({ image: read.image, map: read.map.id, wish });
  if (!plan.ok) return sayProblem(terminal, plan.problem);
  const of = `restore ${scope} ${target}`;
  return showOrWrite(terminal, bench, { wish: { plan: plan.value.plan }, of, sought: 'after' }, word);
}

/** A kept image by its SHA-256 or the beginning of it, proved against it. */
async function findKept(bench: MemoryBench, image: string): Promise<Result<string>> {
  const entries = await bench.vault.entries();
  if (!entries.ok) return entries;
  const found = new Set(entries.value.map(({ sha256 }) => sha256).filter((sha) => sha.startsWith(image)));
  const [only] = found;
  if (only === undefined)
    return failed('image-unknown', `No kept image has a SHA-256 that begins with "${image}"; check it.`);
  if (found.size > 1)
    return failed('image-ambiguous', `${String(found.size)} kept images begin with "${image}"; give more of it.`);
  const read = await bench.vault.read(only);
  return read.ok ? done(only) : read;
}
