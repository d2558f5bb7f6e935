/** Plans the bytes that put mappings into a layer: overwrites only, and shows every change before anything is written. */
import type { PadMapping } from '../mapping/mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { done, failed, type Result } from '../result.ts';
import { checkImage } from './check-image.ts';
import { decodeLayers, type DecodedLayer } from './decode-layers.ts';
import type { LayerName, MemoryMap } from './memory-map.ts';
import type { Change, Patch } from './patch.ts';
import { isPlausible, whyImplausible } from './plausible.ts';
import { settle } from './settle-layers.ts';
import { encodeStick } from './stick-codec.ts';
import { changesOfStick } from './stored-values.ts';
import { checkChecksums } from './wrong-checksums.ts';

/** SHA-256 of some bytes, 64 hex digits in lower case: passed in, for core has no hash of its own. */
export type Digest = (bytes: Uint8Array) => string;

export interface PlanOptions {
  /** The technician was told that the map is probably wrong, and wants the plan all the same. */
  readonly acceptsWrongChecksum?: boolean;
}

/**
 * The layer's marker is set where it is not valid yet, for else nothing would read what was written; its checksum follows, and so
 * does every other that was right before, whichever bytes it covers. One of another layer that is wrong stays wrong: put right it
 * would bring a layer into use that the pad passes over today. Changes of checksums and markers stand last, in `settleOrder`.
 * Refused: another image, a stick that the layer does not hold, a mapping that is not plausible or cannot be encoded, a layer
 * that would become valid while another of its sticks is not plausible, a plan without a change, and, unless it is accepted, an
 * image with a checksum that is wrong already.
 */
export function planPatch(
  image: Uint8Array,
  map: MemoryMap,
  name: LayerName,
  mappings: PadMapping,
  digest: Digest,
  { acceptsWrongChecksum = false }: PlanOptions = {},
): Result<Patch> {
  const wrong = checkImage(image, map) ?? (acceptsWrongChecksum ? null : checkChecksums(image, map));
  if (wrong !== null) return { ok: false, problem: wrong };
  if (map.layers[name] === undefined)
    return failed('image-layer', `The map ${map.id} has no ${name} layer; choose one that it has.`);
  const after = Uint8Array.from(image);
  const changes: Change[] = [];
  for (const stick of STICKS) {
    if (mappings[stick] === undefined) continue;
    const put = putStick(image, after, map, name, stick, mappings);
    if (!put.ok) return put;
    changes.push(...put.value);
  }
  const settled = changes.length === 0 ? done([]) : settle(image, after, map, name);
  if (!settled.ok) return settled;
  changes.push(...settled.value);
  if (changes.length === 0)
    return failed('patch-nothing', `The ${name} layer holds these numbers already; there is nothing to write.`);
  const bad = decodeLayers(after, map)
    .find((one) => one.layer === name)
    ?.sticks.find(({ mapping }) => mapping === null);
  if (bad !== undefined)
    return failed(
      'patch-half-layer',
      `The ${name} layer would be used with a ${bad.stick} stick that is not plausible (${bad.implausible ?? ''}); plan both sticks together.`,
    );
  const { id, size } = map;
  return done({
    kind: 'stickwright-patch',
    version: 1,
    map: id,
    sha256: digest(image),
    size,
    changes,
    result: digest(after),
  });
}

/** Copies what one layer holds into the other, for the sticks named. */
export function planCarry(
  image: Uint8Array,
  map: MemoryMap,
  carry: { readonly from: LayerName; readonly to: LayerName; readonly sticks: readonly StickId[] },
  digest: Digest,
  options: PlanOptions = {},
): Result<Patch> {
  const wrong = checkImage(image, map);
  if (wrong !== null) return { ok: false, problem: wrong };
  const from: DecodedLayer | undefined = decodeLayers(image, map).find(({ layer }) => layer === carry.from);
  if (from === undefined)
    return failed('image-layer', `The map ${map.id} has no ${carry.from} layer; choose one that it has.`);
  const mappings: Partial<Record<StickId, PadMapping[StickId]>> = {};
  for (const stick of carry.sticks) {
    const stored = from.sticks.find((one) => one.stick === stick);
    if (stored === undefined)
      return failed('image-stick', `The ${carry.from} layer holds no ${stick} stick; leave it out.`);
    if (stored.mapping === null)
      return failed(
        'image-implausible',
        `The ${carry.from} layer's ${stick} stick is not plausible (${stored.implausible ?? ''}); there is nothing to carry.`,
      );
    mappings[stick] = stored.mapping;
  }
  return planPatch(image, map, carry.to, mappings as PadMapping, digest, options);
}

function putStick(
  before: Uint8Array,
  after: Uint8Array,
  map: MemoryMap,
  name: LayerName,
  stick: StickId,
  mappings: PadMapping,
): Result<Change[]> {
  const mapping = mappings[stick];
  const place = map.layers[name]?.sticks[stick];
  if (mapping === undefined || place === undefined)
    return failed('image-stick', `The ${name} layer holds no ${stick} stick; leave it out of the plan.`);
  if (!isPlausible(mapping, map.plausible))
    return failed(
      'image-implausible',
      `The ${stick} stick's mapping is not plausible: ${whyImplausible(mapping, map.plausible)} Change it; the bits and the least span are the map's rule.`,
    );
  const bytes = encodeStick(place.codec, mapping);
  if (!bytes.ok) return bytes;
  after.set(bytes.value, place.offset);
  return done(changesOfStick(place.codec, place.offset, before, after, `${name} ${stick}`));
}
