/** Kept images: decoded, compared, planned for, patched into new ones. An image is never changed. */
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { compareImages } from '../../../core/image/compare-images.ts';
import { checkImage } from '../../../core/image/check-image.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { judgePatch } from '../../../core/image/judge-patch.ts';
import { judgeSource, type NumberSource } from '../../../core/image/number-source.ts';
import { patchAsks } from '../../../core/image/patch-asks.ts';
import { parsePatch, sourceOfPatch, type Patch } from '../../../core/image/patch.ts';
import { planCarry, planPatch, type PlanOptions } from '../../../core/image/plan-patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { whoReads } from '../../../core/image/who-reads.ts';
import { kinshipOf, ownerOf, type PadOwner } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import type { Vault, VaultEntry } from '../../store/image-vault.ts';
import { sha256Of } from '../../store/sha256.ts';
import { nearestOwner, ownersOf, sourceOf, type NumberSources } from './image-owners.ts';
import type { KnownMaps } from './known-maps.ts';
import { unitKey } from '../pads/pad-key.ts';
import type { ShownPlans } from './shown-plans.ts';
import { otherPad } from './write-refusals.ts';

type ImageSummary = Reply<'images.list'>[number];

/** A multiple of three, so that every piece but the last is base64 without padding. */
const PIECE_BYTES = 393_216;

export class ImageWork {
  readonly #vault: Vault;
  readonly #maps: KnownMaps;
  readonly #plans: ShownPlans;
  readonly #now: () => Date;
  readonly #sources: NumberSources;

  constructor(vault: Vault, maps: KnownMaps, plans: ShownPlans, now: () => Date, sources: NumberSources) {
    this.#sources = sources;
    this.#vault = vault;
    this.#maps = maps;
    this.#plans = plans;
    this.#now = now;
  }

  /** The one kept last first. */
  async list(): Promise<Result<ImageSummary[]>> {
    const entries = await this.#vault.entries();
    if (!entries.ok) return entries;
    const newest = entries.value.toReversed();
    return done([...Map.groupBy(newest, ({ sha256 }) => sha256).values()].flatMap((kept) => summaryOf(kept) ?? []));
  }

  async summary(image: string): Promise<Result<ImageSummary>> {
    const listed = await this.list();
    if (!listed.ok) return listed;
    const found = listed.value.find((one) => one.image === image);
    if (found !== undefined) return done(found);
    return failed('image-unknown', 'This image is not among the kept ones; choose one from the list.');
  }

  async open({ image, map }: Request<'images.open'>): Promise<Result<Reply<'images.open'>>> {
    const read = await this.#readUnder(image, map);
    if (!read.ok) return read;
    const { bytes, under } = read.value;
    const layers = decodeLayers(bytes, under);
    const fitting = (await this.#maps.read()).fitting(bytes).map(({ id }) => id);
    const { id, name, proof } = under;
    const hosts = whoReads(layers, under);
    return done({ image, size: bytes.length, map: { id, name, proof }, fitting, layers, hosts });
  }

  async compare({ first, second, map }: Request<'images.compare'>): Promise<Result<Reply<'images.compare'>>> {
    const [before, after] = [await this.#vault.read(first), await this.#vault.read(second)];
    if (!before.ok) return before;
    if (!after.ok) return after;
    const maps = await this.#maps.read();
    const fitting = map === null ? maps.onlyFitting(before.value) : maps.find(map);
    return fitting.ok ? done(compareImages(before.value, after.value, fitting.value)) : fitting;
  }

  async plan({ image, map, wish, accepts = [] }: Request<'images.plan'>): Promise<Result<Reply<'images.plan'>>> {
    const read = await this.#readUnder(image, map);
    if (!read.ok) return read;
    const entries = await this.#vault.entries();
    if (!entries.ok) return entries;
    const { bytes, under } = read.value;
    const owners = ownersOf(image, entries.value);
    const source = await this.#sourceFor(wish, owners, entries.value);
    if (!source.ok) return source;
    // What is carried stands in this very memory already.
    const asks = 'carry' in wish ? done([]) : judgeSource(source.value, owners);
    if (!asks.ok) return asks;
    const patch = await this.#patchFor(image, bytes, under, wish, {
      acceptsWrongChecksum: accepts.includes('wrong-checksum'),
    });
    if (!patch.ok) return patch;
    const owned: Patch = { ...patch.value, ...source.value };
    return done(this.#plans.hold(owned, under, 'here', [...asks.value, ...patchAsks(bytes, owned, under)]));
  }

  /** Held as a plan; whether its image is there and what it does to it is looked at when it is applied. */
  async readPatch(text: string): Promise<Result<Reply<'images.readPatch'>>> {
    let value: unknown;
    try {
      value = JSON.parse(text);
    } catch {
      return failed('patch-file', 'The file is not JSON; choose a patch file.');
    }
    const patch = parsePatch(value);
    if (!patch.ok) return patch;
    const map = await this.#maps.find(patch.value.map);
    if (!map.ok) return map;
    const entries = await this.#vault.entries();
    if (!entries.ok) return entries;
    const owners = ownersOf(patch.value.sha256, entries.value);
    const image = await this.#vault.read(patch.value.sha256);
    const asks = image.ok
      ? judgePatch(image.value, patch.value, map.value, owners)
      : judgeSource(sourceOfPatch(patch.value), owners);
    if (!asks.ok) return asks;
    const known = image.ok ? patchAsks(image.value, patch.value, map.value) : [];
    return done(this.#plans.hold(patch.value, map.value, 'file', [...asks.value, ...known]));
  }

  async apply(plan: string): Promise<Result<ImageSummary>> {
    const held = this.#plans.find(plan);
    if (!held.ok) return held;
    const { patch, map } = held.value;
    const image = await this.#vault.read(patch.sha256);
    if (!image.ok) return image;
    // What it asks was shown with it; nothing is written to a pad here.
    const after = applyPatch(image.value, patch, map, sha256Of, { acceptsWrongChecksum: true });
    if (!after.ok) return after;
    const entries = await this.#vault.entries();
    if (!entries.ok) return entries;
    const why = `patched from ${patch.sha256.slice(0, 12)}: ${patch.changes.length} changes`;
    const pad = entries.value.find(
      (one) => one.sha256 === patch.sha256 && kinshipOf(one.pad, patch.pad ?? null) === 'same',
    )?.pad;
    const kept = await this.#vault.keep(after.value, why, map.id, this.#now(), pad ?? null);
    return kept.ok ? this.summary(kept.value.sha256) : kept;
  }

  async export({ image, from }: Request<'images.export'>): Promise<Result<Reply<'images.export'>>> {
    const read = await this.#vault.read(image);
    if (!read.ok) return read;
    const piece = read.value.subarray(from, from + PIECE_BYTES);
    const next = from + PIECE_BYTES < read.value.length ? from + PIECE_BYTES : null;
    return done({ piece: Buffer.from(piece).toString('base64'), next });
  }

  async #patchFor(
    image: string,
    bytes: Uint8Array,
    map: MemoryMap,
    wish: Request<'images.plan'>['wish'],
    options: PlanOptions,
  ): Promise<Result<Patch>> {
    if ('carry' in wish) return planCarry(bytes, map, wish.carry, sha256Of, options);
    if ('store' in wish) return planPatch(bytes, map, wish.store.layer, wish.store.mappings, sha256Of, options);
    if ('undo' in wish) {
      const write = await this.#sources.ended(wish.undo);
      const stood = write.ok ? await this.#vault.read(write.value.before) : write;
      return stood.ok ? planRestore(bytes, stood.value, map, 'whole', sha256Of) : stood;
    }
    const target = await this.#vault.read(wish.restore.image);
    if (!target.ok) return target;
    if (wish.restore.scope === 'whole' && !(await this.#isOfOnePad(image, wish.restore.image)))
      return failed(
        'restore-other-pad',
        'The whole of an image is written back only to the pad that it was read from; restore its calibration alone.',
      );
    return planRestore(bytes, target.value, map, wish.restore.scope, sha256Of);
  }

  /** The numbers of a carry stand in the image itself, those of a restore in another one. */
  async #sourceFor(
    wish: Request<'images.plan'>['wish'],
    owners: readonly PadOwner[],
    entries: readonly VaultEntry[],
  ): Promise<Result<NumberSource>> {
    if ('store' in wish) return sourceOf(wish.store, this.#sources);
    if ('undo' in wish) {
      const write = await this.#sources.ended(wish.undo);
      if (!write.ok) return write;
      // The journal is the proof that this pad held that image, whatever else is known of it.
      const pad = ownerOf(write.value.identity, write.value.unit);
      return owners.some((one) => unitKey(one) === unitKey(pad)) ? done({ pad, domain: null }) : otherPad();
    }
    const theirs = 'restore' in wish ? ownersOf(wish.restore.image, entries) : owners;
    return done({ pad: nearestOwner(theirs, owners), domain: null });
  }

  /** Both were read by the program from the same pad: what stands beside the calibration may be of one pad alone. */
  async #isOfOnePad(first: string, second: string): Promise<boolean> {
    const entries = await this.#vault.entries();
    const padsOf = (image: string): string[] => (entries.ok ? ownersOf(image, entries.value).map(unitKey) : []);
    const others = padsOf(second);
    return padsOf(first).some((key) => others.includes(key));
  }

  async #readUnder(
    image: string,
    map: string | null,
  ): Promise<Result<{ readonly bytes: Uint8Array; readonly under: MemoryMap }>> {
    const read = await this.#vault.read(image);
    if (!read.ok) return read;
    const bytes = read.value;
    const found = map === null ? await this.#onlyFitting(bytes) : await this.#maps.find(map);
    if (!found.ok) return found;
    const problem = checkImage(bytes, found.value);
    return problem === null ? done({ bytes, under: found.value }) : { ok: false, problem };
  }

  async #onlyFitting(bytes: Uint8Array): Promise<Result<MemoryMap>> {
    const only = (await this.#maps.read()).onlyFitting(bytes);
    if (!only.ok) return only;
    if (only.value !== null) return done(only.value);
    return failed(
      'image-no-map',
      `No memory map fits this image of ${bytes.length} bytes; add its map, or look for its calibration.`,
    );
  }
}

/** `kept` is newest first. */
function summaryOf(kept: readonly VaultEntry[]): ImageSummary | null {
  const [newest] = kept;
  if (newest === undefined) return null;
  const { sha256, size } = newest;
  return {
    image: sha256,
    size,
    kept: kept.map(({ at, why, map, pad }) => ({ at, why, map, pad })),
  };
}
