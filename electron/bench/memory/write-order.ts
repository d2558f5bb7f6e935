/** Turns what the technician wishes into the whole of what will be written: checked, cut into blocks, ready to be confirmed. */
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { checkRestored } from '../../../core/image/check-restored.ts';
import { firstDifference } from '../../../core/image/differing-bytes.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { patchedImage } from '../../../core/image/patched-image.ts';
import { judgePatch } from '../../../core/image/judge-patch.ts';
import { judgeSource } from '../../../core/image/number-source.ts';
import type { PatchAsk } from '../../../core/image/ask.ts';
import { patchAsks } from '../../../core/image/patch-asks.ts';
import { sourceOfPatch, type Patch } from '../../../core/image/patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { writeBlocks } from '../../../core/image/write-blocks.ts';
import type { WriteJob } from '../../../core/image/write-job.ts';
import type { PadOwner } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { sha256Of } from '../../store/sha256.ts';
import type { BrokenWrite } from './open-journals.ts';
import type { HeldPlan } from './shown-plans.ts';

/** The image that was read from a pad in this run. */
export interface ReadImage {
  readonly image: string;
  readonly bytes: Uint8Array;
  readonly map: MemoryMap;
  readonly unit: string | null;
}

export interface WriteOrder {
  readonly doing: 'write' | 'finish' | 'restore';
  readonly job: WriteJob;
  readonly patch: Patch;
  /** The write that this one takes up. */
  readonly broken: BrokenWrite | null;
  /** What must be accepted by name before it is written. */
  readonly asks: readonly PatchAsk[];
}

/** Alike for two readings where the memory, its map and the pad's unit are, but for what changes by itself. */
export function steadyDigest({ bytes, map, unit }: ReadImage): string {
  const steady = Uint8Array.from(bytes);
  for (const { offset, length } of map.volatile) steady.fill(0, offset, offset + length);
  return sha256Of(new TextEncoder().encode(JSON.stringify({ unit, map, bytes: sha256Of(steady) })));
}

/**
 * A plan as it was made for the image that was read from this pad, or for a kept one that the pad still holds but for what
 * changes by itself: `kept` reads that.
 */
export async function orderPlan(
  { patch, map, isOwn }: HeldPlan,
  read: ReadImage,
  pad: PadOwner,
  protocol: MemoryProtocol,
  kept: (sha256: string) => Promise<Result<Uint8Array>>,
): Promise<Result<WriteOrder>> {
  // Any bytes may be called a restore in a patch file: there only an image that was kept is one.
  if (patch.restores === true && !isOwn && !(await kept(patch.result ?? '')).ok) return neverKept();
  // An image that differs, if only in what changes by itself, may be another pad's.
  const isRead = patch.sha256 === read.image;
  const ofPad = isRead ? judgePatch(read.bytes, patch, map, [pad]) : judgeSource(sourceOfPatch(patch), [pad]);
  if (!ofPad.ok) return ofPad;
  const base = isRead ? done(read) : await keptBase(patch.sha256, read, kept);
  if (!base.ok) return base;
  const { bytes } = base.value;
  // What a wrong checksum asks is among the asks, and nothing is written before it is accepted.
  const after =
    patch.restores === true
      ? restored(patch, base.value, isOwn)
      : applyPatch(bytes, patch, map, sha256Of, { acceptsWrongChecksum: true });
  if (!after.ok) return after;
  const asks = [...ofPad.value, ...patchAsks(bytes, patch, map)];
  return orderOf('write', patch, after.value, base.value, protocol, null, asks);
}

async function keptBase(
  image: string,
  read: ReadImage,
  kept: (sha256: string) => Promise<Result<Uint8Array>>,
): Promise<Result<ReadImage>> {
  const base = await kept(image);
  if (!base.ok && base.problem.code !== 'file-missing') return base;
  const isAlike =
    base.ok &&
    base.value.length === read.bytes.length &&
    firstDifference(base.value, read.bytes, read.map.volatile) === null;
  if (isAlike) return done({ ...read, image, bytes: base.value });
  return failed(
    'plan-other-image',
    'The plan is for another image than the one last read from this pad; plan it for that one.',
  );
}

/**
 * What is left of a broken write, or its old bytes back, from the memory as it was just read. Either way the whole memory comes to
 * one side of that write: what somebody else changed meanwhile is among the changes that are shown.
 */
export function orderRepair(
  doing: 'finish' | 'restore',
  broken: BrokenWrite,
  read: ReadImage,
  pad: PadOwner,
  protocol: MemoryProtocol,
): Result<WriteOrder> {
  // Its numbers were judged when it began; what is open is whether this is the pad that it began on.
  const ofPad = judgeSource({ pad: broken.head.pad, domain: null }, [pad]);
  if (!ofPad.ok) return ofPad;
  const target = doing === 'restore' ? broken.before : broken.after;
  const patch = planRestore(read.bytes, target, read.map, 'whole', sha256Of);
  if (!patch.ok) return patch;
  const after = patchedImage(read.bytes, patch.value.changes);
  if (!after.ok) return after;
  const asks = [...ofPad.value, ...patchAsks(read.bytes, patch.value, read.map)];
  return orderOf(doing, patch.value, after.value, read, protocol, broken, asks);
}

/** A plan of this program's own was held to its scope when it was made; one from a file may say anything. */
function restored(patch: Patch, { bytes, map }: ReadImage, isOwn: boolean): Result<Uint8Array> {
  const after = patchedImage(bytes, patch.changes);
  if (!after.ok) return after;
  const back = patchedImage(after.value, patch.changes, 'old');
  if (!back.ok) return back;
  const isAsPlanned = patch.size === bytes.length && sha256Of(after.value) === patch.result;
  if (!isAsPlanned || sha256Of(back.value) !== patch.sha256)
    return failed('patch-edited', 'The plan was changed after it was made: its result is another; plan it again.');
  const problem = isOwn ? null : checkRestored(bytes, after.value, map);
  return problem === null ? after : { ok: false, problem };
}

function orderOf(
  doing: WriteOrder['doing'],
  patch: Patch,
  after: Uint8Array,
  { bytes, map, unit }: ReadImage,
  protocol: MemoryProtocol,
  broken: BrokenWrite | null,
  asks: WriteOrder['asks'],
): Result<WriteOrder> {
  const blocks = writeBlocks(patch, bytes, after, map, protocol);
  if (!blocks.ok) return blocks;
  const sides = { map, unit, before: bytes, after, blocks: blocks.value };
  // What a broken write left is nothing to go back to.
  return done({ doing, patch, broken, asks, job: { ...sides, rollsBack: broken === null } });
}

function neverKept(): Result<never> {
  return failed('restore-not-kept', 'The plan restores an image that was never kept here; plan it from a kept image.');
}
