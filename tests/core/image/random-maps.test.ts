/** What holds of every plan, whatever the map: checksums right, nothing else touched, no half of a change ever in use. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { bundledProtocols } from '../../../core/image/bundled-protocols.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import { isWithin, regionsOf } from '../../../core/image/map-regions.ts';
import { LAYERS, type LayerName, type MemoryMap } from '../../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { parseMemoryMap } from '../../../core/image/parse-memory-map.ts';
import { planPatch } from '../../../core/image/plan-patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { patchedImage } from '../../../core/image/patched-image.ts';
import { isMarkedLayer, isValidLayer } from '../../../core/image/valid-layers.ts';
import { writeBlocks, type WriteBlock } from '../../../core/image/write-blocks.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import type { Result } from '../../../core/result.ts';
import { invertPatch } from '../../support/invert-patch.ts';
import { anyMap, anyNumbers, imageOf, sumOver } from '../../support/random-map.ts';

const RUNS = { seed: 11, numRuns: 400 };
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const [bench] = bundledProtocols as [MemoryProtocol];

function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}

const writable = anyMap.filter((map) => parseMemoryMap(map).ok);
const fill = fc.uint8Array({ minLength: 7, maxLength: 64 });
const unused = fc.subarray(['factory', 'user'] as const);

/** A map, an image that fits it, and other numbers for one of its layers. */
const cases = writable.chain((map) =>
  fc.record({
    map: fc.constant(map),
    image: fc
      .tuple(fill, anyNumbers(map), anyNumbers(map), unused)
      .map(([bytes, factory, user, none]) => imageOf(map, bytes, { factory, user }, none)),
    layer: fc.constantFrom(...LAYERS.filter((name) => map.layers[name] !== undefined)),
    wanted: anyNumbers(map),
    block: fc.integer({ min: 1, max: 9 }),
    page: fc.constantFrom(null, 8, 16),
  }),
);

/** Numbers for the sticks that the layer holds. */
function pick(map: MemoryMap, layer: LayerName, { left, right }: Required<PadMapping>): PadMapping {
  return map.layers[layer]?.sticks.right === undefined ? { left } : { left, right };
}

function held(map: MemoryMap, layer: LayerName, image: Uint8Array): string {
  return regionsOf(map)
    .filter((region) => region.layer === layer && region.role === 'stick')
    .map(({ offset, length }) => image.subarray(offset, offset + length).join())
    .join(';');
}

/** Plays the blocks; after each the layers that could be kept from it must not be in use with some numbers old and some new. */
function play(map: MemoryMap, before: Uint8Array, after: Uint8Array, blocks: readonly WriteBlock[]): void {
  const state = Uint8Array.from(before);
  for (const block of blocks) {
    expect(state.subarray(block.offset, block.offset + block.old.length)).toEqual(block.old);
    state.set(block.new, block.offset);
    for (const layer of decodeLayers(state, map)) {
      const { marker, checksum } = map.layers[layer.layer]!;
      if (marker === null && checksum === null) continue;
      const numbers = held(map, layer.layer, state);
      const isMixed = ![before, after].some((image) => held(map, layer.layer, image) === numbers);
      expect([layer.layer, isMixed && isValidLayer(layer)]).toEqual([layer.layer, false]);
    }
  }
  expect(state).toEqual(after);
}

describe('a plan for any map', () => {
  it('leaves every checksum right and touches nothing that the map does not name', () => {
    fc.assert(
      fc.property(cases, ({ map, image, layer, wanted }) => {
        const plan = planPatch(image, map, layer, pick(map, layer, wanted), digest);
        fc.pre(plan.ok || plan.problem.code !== 'patch-nothing');
        const after = good(applyPatch(image, good(plan), map, digest));
        for (const one of decodeLayers(after, map).filter(isMarkedLayer)) {
          const { checksum } = map.layers[one.layer]!;
          if (checksum === null) continue;
          const sum = sumOver(after, checksum);
          expect(after.subarray(checksum.offset, checksum.offset + sum.length)).toEqual(sum);
        }
        const found = decodeLayers(after, map).find((one) => one.layer === layer)!;
        expect(isValidLayer(found)).toBe(true);
        for (const { stick, mapping } of found.sticks) expect(mapping).toEqual(wanted[stick]);
        const stray = [...after.keys()].filter(
          (at) =>
            after[at] !== image[at] && !regionsOf(map).some((region) => isWithin({ offset: at, length: 1 }, region)),
        );
        expect(stray).toEqual([]);
        expect(good(applyPatch(after, invertPatch(good(plan), after, digest), map, digest))).toEqual(image);
      }),
      RUNS,
    );
  });

  it('is never in use by half, wherever the writing stops', () => {
    fc.assert(
      fc.property(cases, ({ map, image, layer, wanted, block, page }) => {
        const plan = planPatch(image, map, layer, pick(map, layer, wanted), digest);
        fc.pre(plan.ok || plan.problem.code !== 'patch-nothing');
        const after = good(applyPatch(image, good(plan), map, digest));
        const by = { ...bench, write: { ...bench.write, block, page } };
        const blocks = good(writeBlocks(good(plan), image, after, map, by));
        for (const { offset, new: bytes } of blocks) {
          expect(bytes.length).toBeLessThanOrEqual(block);
          if (page !== null) expect(Math.floor((offset + bytes.length - 1) / page)).toBe(Math.floor(offset / page));
        }
        play(map, image, after, blocks);
      }),
      RUNS,
    );
  });

  it('comes back whole from any image, in the same order', () => {
    const two = cases.chain((one) =>
      fc.record({
        one: fc.constant(one),
        target: fc
          .tuple(fill, anyNumbers(one.map), anyNumbers(one.map), unused)
          .map(([bytes, factory, user, none]) => imageOf(one.map, bytes, { factory, user }, none)),
      }),
    );
    fc.assert(
      fc.property(two, ({ one: { map, image, block, page }, target }) => {
        const plan = planRestore(image, target, map, 'whole', digest);
        fc.pre(plan.ok);
        const { changes } = good(plan);
        expect(good(patchedImage(image, changes))).toEqual(target);
        const by = { ...bench, write: { ...bench.write, block, page } };
        play(map, image, target, good(writeBlocks({ changes }, image, target, map, by)));
      }),
      RUNS,
    );
  });
});

describe('parseMemoryMap', () => {
  it('refuses exactly the maps whose checksums cover each other in a circle', () => {
    const seen = { circle: 0, chain: 0 };
    fc.assert(
      fc.property(anyMap, (map) => {
        const read = parseMemoryMap(map);
        const sums = regionsOf(map).filter(({ role }) => role === 'checksum');
        const covers = sums.map(({ layer, name }) => {
          const { offset, length } = map.layers[layer]!.checksum!.covers;
          const other = sums.find((one) => one.name !== name);
          return other !== undefined && other.offset < offset + length && offset < other.offset + other.length;
        });
        const isCircle = covers.length === 2 && covers.every(Boolean);
        if (isCircle) seen.circle += 1;
        else if (covers.some(Boolean)) seen.chain += 1;
        expect(read.ok).toBe(!isCircle);
        if (!read.ok) expect(read.problem.says).toContain('by way of others');
      }),
      { seed: 12, numRuns: 600 },
    );
    expect(seen.circle).toBeGreaterThan(5);
    expect(seen.chain).toBeGreaterThan(20);
  });
});
