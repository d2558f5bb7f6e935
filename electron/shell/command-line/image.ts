/** `image …`: what a memory image holds, and patches for it. An input is never touched. */
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { checkCopies } from '../../../core/image/check-image.ts';
import { compareImages } from '../../../core/image/compare-images.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import { imageTable } from '../../../core/image/image-table.ts';
import type { LayerName, MemoryMap } from '../../../core/image/memory-map.ts';
import { judgePatch } from '../../../core/image/judge-patch.ts';
import { judgeSource, type NumberSource } from '../../../core/image/number-source.ts';
import type { AskCode, PatchAsk } from '../../../core/image/ask.ts';
import { patchAsks } from '../../../core/image/patch-asks.ts';
import { parsePatch, type Patch } from '../../../core/image/patch.ts';
import { planCarry, planPatch, type PlanOptions } from '../../../core/image/plan-patch.ts';
import { whoReads } from '../../../core/image/who-reads.ts';
import { row } from '../../../core/measure/table.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { nearestOwner, ownersOf } from '../../bench/memory/image-owners.ts';
import { findPlaces } from '../../store/places.ts';
import { Vault } from '../../store/image-vault.ts';
import { sha256Of } from '../../store/sha256.ts';
import { readImage, readMap } from './image-input.ts';
import { readInput, readJson } from './input-files.ts';
import { readMappingFile } from './log-input.ts';
import { outputHead } from './output.ts';
import { refuseOverwrite, writeOutput } from './output-files.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ImageOptions {
  readonly map?: string;
  readonly copy?: string;
  readonly layer?: LayerName;
  readonly mapping?: string;
  readonly carry?: string;
  readonly stick?: StickId;
  readonly out?: string;
  readonly force?: boolean;
  /** What was asked and is wanted all the same. */
  readonly accept?: readonly AskCode[];
}

export async function showImage(terminal: Terminal, file: string, options: ImageOptions): Promise<ExitCode> {
  const read = await readImage(file, options.map);
  if (!read.ok) return sayProblem(terminal, read.problem);
  const { image, map } = read.value;
  const layers = decodeLayers(image, map);
  const hosts = whoReads(layers, map);
  const head = { ...outputHead('image'), map: map.id, proof: map.proof, size: image.length, sha256: sha256Of(image) };
  await terminal.print(
    terminal.json ? JSON.stringify({ ...head, layers, hosts }) : drawSections(imageTable(layers, hosts)),
  );
  return EXIT.done;
}

export async function planImage(terminal: Terminal, file: string, options: ImageOptions): Promise<ExitCode> {
  const { out, copy, map: mapFile, mapping } = options;
  const inputs = [file, copy, mapFile, mapping];
  const refusal = out === undefined ? null : refuseOverwrite(out, options.force === true, inputs);
  if (refusal !== null) return sayProblem(terminal, refusal);
  const read = await readImage(file, options.map);
  if (!read.ok) return sayProblem(terminal, read.problem);
  const { image, map } = read.value;
  const differing = options.copy === undefined ? null : await differingCopy(image, options.copy, map);
  if (differing !== null) return sayProblem(terminal, differing.problem);
  const plan = await planFrom(image, map, options);
  if (!plan.ok) return sayProblem(terminal, plan.problem);
  const asks = await asksOf(image, plan.value, map);
  if (!asks.ok) return sayProblem(terminal, asks.problem);
  const kept = await vault().keep(image, `planned from ${file}`, map.id, new Date());
  if (!kept.ok) return sayProblem(terminal, kept.problem);
  if (out !== undefined) {
    const written = await writeOutput(out, `${JSON.stringify(plan.value, null, 2)}\n`, options.force === true);
    if (!written.ok) return sayProblem(terminal, written.problem);
  }
  sayAsks(terminal, asks.value);
  const told = { ...plan.value, asks: asks.value.map(({ code }) => code) };
  await terminal.print(terminal.json ? JSON.stringify(told) : drawSections([changesSection(plan.value)]));
  return EXIT.done;
}

export async function applyImage(
  terminal: Terminal,
  file: string,
  patchFile: string,
  options: ImageOptions,
): Promise<ExitCode> {
  const out = options.out ?? '';
  const refusal = refuseOverwrite(out, options.force === true, [file, patchFile, options.map]);
  if (refusal !== null) return sayProblem(terminal, refusal);
  const json = await readJson(patchFile);
  const patch = json.ok ? parsePatch(json.value) : json;
  if (!patch.ok) return sayProblem(terminal, patch.problem);
  const image = await readInput(file);
  if (!image.ok) return sayProblem(terminal, image.problem);
  const map = await readMap(options.map ?? patch.value.map, image.value);
  if (!map.ok) return sayProblem(terminal, map.problem);
  const asks = await asksOf(image.value, patch.value, map.value);
  if (!asks.ok) return sayProblem(terminal, asks.problem);
  const after = applyPatch(image.value, patch.value, map.value, sha256Of, insistsOn(options));
  if (!after.ok) return sayProblem(terminal, after.problem);
  sayAsks(terminal, asks.value);
  const kept = await vault().keep(image.value, `before the patch ${patchFile}`, map.value.id, new Date());
  if (!kept.ok) return sayProblem(terminal, kept.problem);
  const written = await writeOutput(out, after.value, options.force === true);
  if (!written.ok) return sayProblem(terminal, written.problem);
  const done = { ...outputHead('image-apply'), out, sha256: sha256Of(after.value), changes: patch.value.changes };
  await terminal.print(terminal.json ? JSON.stringify(done) : drawSections([changesSection(patch.value)]));
  return EXIT.done;
}

export async function compareFiles(
  terminal: Terminal,
  first: string,
  second: string,
  options: ImageOptions,
): Promise<ExitCode> {
  const [before, after] = [await readInput(first), await readInput(second)];
  if (!before.ok) return sayProblem(terminal, before.problem);
  if (!after.ok) return sayProblem(terminal, after.problem);
  const map = await readMap(options.map, before.value);
  // Without a map the bytes are compared all the same; one that was asked for, or that cannot be told, must be put right.
  if (!map.ok && (options.map !== undefined || map.problem.code.startsWith('map-')))
    return sayProblem(terminal, map.problem);
  const comparison = compareImages(before.value, after.value, map.ok ? map.value : null);
  const rows = comparison.runs.map((run) =>
    row(
      `byte ${String(run.offset)}`,
      `${run.old} → ${run.new}`,
      run.means ?? (run.volatile ? 'changes by itself' : ''),
    ),
  );
  const title = comparison.sameSize ? 'what differs' : 'what differs; the two have different sizes';
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('image-compare'), ...comparison })
      : drawSections([{ title, rows: rows.length === 0 ? [row('bytes', 'all alike')] : rows }]),
  );
  return EXIT.done;
}

async function differingCopy(image: Uint8Array, file: string, map: MemoryMap) {
  const copy = await readInput(file);
  if (!copy.ok) return copy;
  const problem = checkCopies(image, copy.value, map);
  return problem === null ? null : { ok: false as const, problem };
}

async function planFrom(image: Uint8Array, map: MemoryMap, options: ImageOptions): Promise<Result<Patch>> {
  const sticks = options.stick === undefined ? STICKS : [options.stick];
  if (options.carry !== undefined) {
    const [from, to] = options.carry.split(':') as [LayerName, LayerName];
    const held = sticks.filter((stick) => options.stick !== undefined || map.layers[from]?.sticks[stick] !== undefined);
    const carried = planCarry(image, map, { from, to, sticks: held }, sha256Of, insistsOn(options));
    if (!carried.ok) return carried;
    const entries = await vault().entries();
    if (!entries.ok) return entries;
    const owners = ownersOf(sha256Of(image), entries.value);
    return done({ ...carried.value, pad: nearestOwner(owners, owners), domain: null });
  }
  const mapping = await readMappingFile(options.mapping);
  if (!mapping.ok) return mapping;
  if (mapping.value === null || options.layer === undefined)
    return failed('plan-nothing', 'Say what to plan: --carry user:factory, or --layer with --mapping.');
  const chosen = Object.fromEntries(
    sticks.flatMap((stick) => {
      const one = mapping.value?.sticks[stick];
      return one === undefined ? [] : [[stick, one] as const];
    }),
  );
  const { pad, domain } = mapping.value;
  // Whose numbers they are comes before what is wrong with them.
  const ofPad = await judgeFor(image, { pad, domain });
  if (!ofPad.ok) return ofPad;
  const patch = planPatch(image, map, options.layer, chosen, sha256Of, insistsOn(options));
  return patch.ok ? done({ ...patch.value, pad, domain }) : patch;
}

/** What is asked before a patch is written to the pad that the image is of; refused where its numbers are another pad's. */
async function asksOf(image: Uint8Array, patch: Patch, map: MemoryMap): Promise<Result<readonly PatchAsk[]>> {
  const entries = await vault().entries();
  if (!entries.ok) return entries;
  const ofPad = judgePatch(image, patch, map, ownersOf(sha256Of(image), entries.value));
  return ofPad.ok ? done([...ofPad.value, ...patchAsks(image, patch, map)]) : ofPad;
}

async function judgeFor(image: Uint8Array, source: NumberSource): Promise<Result<readonly PatchAsk[]>> {
  const entries = await vault().entries();
  return entries.ok ? judgeSource(source, ownersOf(sha256Of(image), entries.value)) : entries;
}

function sayAsks(terminal: Terminal, asks: readonly PatchAsk[]): void {
  for (const { code, says } of asks) terminal.say(`${says} (${code})`);
}

function insistsOn({ accept = [] }: ImageOptions): PlanOptions {
  return { acceptsWrongChecksum: accept.includes('wrong-checksum') };
}

function changesSection({ changes }: Patch) {
  return {
    title: 'changes',
    rows: changes.map(({ means, offset, old, new: now }) => row(means, `${old} → ${now}`, `at ${String(offset)}`)),
  };
}

function vault(): Vault {
  return new Vault(findPlaces().vault);
}
