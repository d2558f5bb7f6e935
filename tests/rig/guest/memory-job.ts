/** Plans for the virtual pad's memory, and the restore that a differing end offers, each through the product's own steps. */
import { memoryEnd } from '../../../core/image/differing-bytes.ts';
import type { LayerName, MemoryMap } from '../../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import type { Patch } from '../../../core/image/patch.ts';
import { planPatch } from '../../../core/image/plan-patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { readMemory, type ReadEnd } from '../../../core/image/read-memory.ts';
import type { WriteJob } from '../../../core/image/write-job.ts';
import { writeMemory } from '../../../core/image/write-memory.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { orderPlan } from '../../../electron/bench/memory/write-order.ts';
import { sha256Of } from '../../../electron/store/sha256.ts';
import { wanted } from '../../support/fault-pad.ts';
import type { MemoryBench, Played } from './memory-bench.ts';
import { PAD } from './rig-pad.ts';

export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}

export function readAll(bench: MemoryBench, by: MemoryProtocol, map: MemoryMap): Promise<Played<Result<ReadEnd>>> {
  return bench.play(by, (exchange) =>
    readMemory(exchange, (id) => (id === map.id ? done(map) : failed('map-unknown', `${id} is not here.`))),
  );
}

/** The job that stores other numbers in a layer of the image that was read. */
export function planJob(read: ReadEnd, layer: LayerName, by: MemoryProtocol): Promise<WriteJob> {
  return jobOf(valueOf(planPatch(read.image, read.map, layer, wanted, sha256Of)), read, by);
}

/** Reads what a write left, writes its old bytes back, and tells whether the pad really holds them then. */
export async function restore(bench: MemoryBench, job: WriteJob, by: MemoryProtocol): Promise<boolean> {
  const left = valueOf((await readAll(bench, by, job.map)).value);
  const patch = planRestore(left.image, job.before, job.map, 'whole', sha256Of);
  if (patch.ok) {
    const back = { ...(await jobOf(patch.value, left, by)), rollsBack: false };
    const { value } = await bench.play(by, (exchange) => writeMemory(exchange, back));
    if (value.end !== 'after') return false;
  } else if (patch.problem.code !== 'patch-nothing') return false;
  const known = { now: await bench.look(), unknown: [] };
  return memoryEnd(known, job.before, job.after, job.map) === 'before';
}

/** As the bench makes it of its own plan for the image that was just read. */
async function jobOf(patch: Patch, { image, map, unit }: ReadEnd, by: MemoryProtocol): Promise<WriteJob> {
  const read = { image: sha256Of(image), bytes: image, map, unit };
  const owner = { vendorId: PAD.vendorId, productId: PAD.productId, serial: PAD.serial, unit };
  return valueOf(await orderPlan({ patch, map, isOwn: true }, read, owner, by, noneKept)).job;
}

function noneKept(): Promise<Result<Uint8Array>> {
  return Promise.resolve(failed('file-missing', 'No image is kept in the rig; plan for the one that was just read.'));
}
