/** Planning, applying and undoing patches. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { compareImages } from '../../../core/image/compare-images.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import { regionsOf } from '../../../core/image/map-regions.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { parsePatch, type Patch } from '../../../core/image/patch.ts';
import { planCarry, planPatch } from '../../../core/image/plan-patch.ts';
import { whoReads } from '../../../core/image/who-reads.ts';
import type { AxisMapping, PadMapping } from '../../../core/mapping/mapping.ts';
import type { Result } from '../../../core/result.ts';
import { invertPatch } from '../../support/invert-patch.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../../support/make-image.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}
function codeOf(result: Result<unknown>): string {
  return result.ok ? 'done' : result.problem.code;
}

const moved: PadMapping = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } } };

const axis: fc.Arbitrary<AxisMapping> = fc
  .tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 1800, max: 2200 }), fc.integer({ min: 3000, max: 3800 }))
  .map(([min, centre, max]) => ({ min, centre, max }));
const stick = fc.record({ x: axis, y: axis });
const either = fc.constantFrom(packed, words);

describe('planPatch', () => {
  const image = makeImage(packed, { factory: bothMappings });

  it('names each change, old → new, with its bytes', () => {
    const plan = good(planPatch(image, packed, 'factory', moved, digest));
    expect(plan).toMatchObject({ map: packed.id, size: packed.size, sha256: digest(image) });
    expect(plan.changes.map(({ means }) => means)).toEqual([
      'factory left x.min 850 → 800',
      'factory left x.max 3270 → 3350',
      'factory left x.centre 2061 → 2070',
    ]);
    for (const change of plan.changes) expect(change.old).toHaveLength(change.new.length);
  });

  it('says of an edge that stays why its bytes change all the same', () => {
    const centred = { left: { ...leftMapping, x: { ...leftMapping.x, centre: 2071 } } };
    const plan = good(planPatch(image, packed, 'factory', centred, digest));
    expect(plan.changes.map(({ means }) => means)).toContain('factory left x.max stays 3270, 1199 from the new centre');
  });

  it('keeps the checksum of a layer that is not in use right, whatever numbers stand there', () => {
    const { factory, user } = packed.layers;
    const covers = { offset: factory!.sticks.left!.offset, length: 9 };
    const map: MemoryMap = {
      ...packed,
      layers: { factory: factory!, user: { ...user!, checksum: { ...user!.checksum!, covers } } },
    };
    const unused = makeImage(map, { factory: bothMappings });
    const plan = good(planPatch(unused, map, 'factory', moved, digest));
    expect(plan.changes.map(({ offset }) => offset)).toContain(user!.checksum!.offset);
    expect(codeOf(applyPatch(unused, plan, map, digest))).toBe('done');
    unused.set([0x6b, 0x1e, 0xd4, 0x27], user!.marker!.offset);
    const used = planPatch(unused, map, 'factory', moved, digest);
    expect(codeOf(used.ok ? applyPatch(unused, used.value, map, digest) : used)).toBe('patch-implausible');
  });

  it('sets the marker of a layer that nothing would read otherwise, then the checksum that covers it', () => {
    const plan = good(planPatch(image, packed, 'user', bothMappings, digest));
    expect(plan.changes.at(-2)?.means).toBe('user marker: valid from now on');
    expect(plan.changes.at(-1)?.means).toMatch(/^user checksum /u);
    const after = good(applyPatch(image, plan, packed, digest));
    const hosts = (bytes: Uint8Array) => whoReads(decodeLayers(bytes, packed), packed).map(({ layer }) => layer);
    expect(hosts(image)).toEqual(['factory', 'factory']);
    expect(hosts(after)).toEqual(['user', 'factory']);
  });

  it('follows the checksum', () => {
    const stored = makeImage(words, { factory: bothMappings });
    const after = good(applyPatch(stored, good(planPatch(stored, words, 'factory', moved, digest)), words, digest));
    expect(decodeLayers(after, words)[0]).toMatchObject({ checksum: { good: true } });
  });

  it.each([
    ['half of a layer that would become valid', packed, 'user', { left: leftMapping }, 'patch-half-layer'],
    ['a layer that the map does not have', words, 'user', bothMappings, 'image-layer'],
    [
      'what is not plausible',
      packed,
      'factory',
      { left: { ...leftMapping, x: { min: 2000, centre: 2061, max: 3000 } } },
      'image-implausible',
    ],
    [
      'a span without a whole count',
      packed,
      'factory',
      { left: { ...leftMapping, x: { min: 800.5, centre: 2061, max: 3000 } } },
      'image-not-encodable',
    ],
    ['nothing', packed, 'factory', { left: leftMapping }, 'patch-nothing'],
  ] as const)('refuses %s', (_, map, layer, mappings, code) => {
    const from = makeImage(map, { factory: bothMappings });
    expect(codeOf(planPatch(from, map, layer, mappings, digest))).toBe(code);
  });

  it('refuses an image that is short, long, empty or of another kind, and says by how many bytes', () => {
    const says = (bytes: Uint8Array): string => {
      const plan = planPatch(bytes, packed, 'factory', moved, digest);
      return plan.ok ? 'planned' : plan.problem.says;
    };
    expect(says(image.subarray(1))).toContain('1 too few');
    expect(says(new Uint8Array([...image, 0, 0, 0]))).toContain('3 too many');
    expect(says(new Uint8Array(0))).toContain('empty');
    expect(says(Uint8Array.from(image, (byte, at) => (at === 2 ? byte ^ 1 : byte)))).toContain('byte 2');
  });
});

describe('planCarry', () => {
  it('copies one layer to the other, byte for byte the same numbers', () => {
    const image = makeImage(packed, { factory: bothMappings, user: { left: moved.left!, right: rightMapping } });
    const carry = { from: 'user', to: 'factory', sticks: ['left', 'right'] } as const;
    const after = good(applyPatch(image, good(planCarry(image, packed, carry, digest)), packed, digest));
    const [factory, user] = decodeLayers(after, packed);
    expect(factory?.sticks.map(({ mapping }) => mapping)).toEqual(user?.sticks.map(({ mapping }) => mapping));
  });

  it('refuses to carry what is not plausible', () => {
    const image = makeImage(packed, { factory: bothMappings });
    const carry = { from: 'user', to: 'factory', sticks: ['left'] } as const;
    expect(codeOf(planCarry(image, packed, carry, digest))).toBe('image-implausible');
  });
});

describe('a patch', () => {
  it('changes no byte outside of its plan, and its inverse restores the image', () => {
    fc.assert(
      fc.property(either, stick, stick, fc.nat(1000), (map, left, right, seed) => {
        const image = makeImage(map, { factory: bothMappings }, seed);
        const untouched = Uint8Array.from(image);
        const plan = planPatch(image, map, 'factory', { left, right }, digest);
        if (!plan.ok) {
          expect(plan.problem.code).toBe('patch-nothing');
          return;
        }
        const after = good(applyPatch(image, plan.value, map, digest));
        expect(image).toEqual(untouched);
        const planned = new Set(
          plan.value.changes.flatMap(({ offset, old }) => Array.from({ length: old.length / 2 }, (_, i) => offset + i)),
        );
        const differing = Array.from(image).flatMap((byte, at) => (byte === after[at] ? [] : [at]));
        for (const at of differing) expect(planned.has(at)).toBe(true);
        const named = compareImages(image, after, map).runs;
        for (const run of named) expect(run.means).not.toBeNull();
        expect(good(applyPatch(after, invertPatch(plan.value, after, digest), map, digest))).toEqual(image);
      }),
      { seed: 5, numRuns: 40 },
    );
  });

  it('is undone even where the layer was never written before', () => {
    const image = makeImage(packed, { factory: bothMappings });
    const plan = good(planPatch(image, packed, 'user', bothMappings, digest));
    const after = good(applyPatch(image, plan, packed, digest));
    const inverse = good(parsePatch(JSON.parse(JSON.stringify(invertPatch(plan, after, digest)))));
    expect(good(applyPatch(after, inverse, packed, digest))).toEqual(image);
  });

  it('is refused on any other image', () => {
    const image = makeImage(words, { factory: bothMappings });
    const plan = good(planPatch(image, words, 'factory', moved, digest));
    fc.assert(
      fc.property(fc.nat(words.size - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const other = Uint8Array.from(image, (byte, index) => (index === at ? byte ^ flip : byte));
        expect(codeOf(applyPatch(other, plan, words, digest))).toBe('patch-image');
      }),
      { seed: 6, numRuns: 200 },
    );
    expect(codeOf(applyPatch(image.subarray(1), plan, words, digest))).toBe('patch-size');
    expect(codeOf(applyPatch(image, plan, packed, digest))).toBe('patch-map');
  });

  it('is refused when it was edited by hand', () => {
    const image = makeImage(packed, { factory: bothMappings });
    const plan = good(planPatch(image, packed, 'factory', moved, digest));
    const edit = (change: Partial<Patch['changes'][0]>, more: Partial<Patch> = {}): string => {
      const [first, ...others] = plan.changes;
      return codeOf(
        applyPatch(image, { ...plan, changes: [{ ...first!, ...change }, ...others], ...more }, packed, digest),
      );
    };
    const [first] = plan.changes;
    expect(edit({ new: 'ffffff' })).toBe('patch-edited');
    expect(edit({ offset: first!.offset + 1 })).toBe('patch-old-bytes');
    expect(edit({ offset: 0x100, old: Buffer.from(image.subarray(0x100, 0x103)).toString('hex') })).toBe(
      'patch-outside-map',
    );
    // Without its result the layer itself must hold: spans of nothing are not plausible.
    expect(edit({ new: '000000' }, { result: undefined })).toBe('patch-implausible');
    // Nobody passes off a change as the undoing of one.
    expect(edit({ new: '000000' }, { result: undefined, restores: true })).toBe('patch-implausible');
    const twice = { ...plan, changes: [first!, first!] };
    expect(codeOf(applyPatch(image, twice, packed, digest))).toBe('patch-overlap');
    const stored = makeImage(words, { factory: bothMappings });
    const wordPlan = good(planPatch(stored, words, 'factory', moved, digest));
    const withoutSum = { ...wordPlan, changes: wordPlan.changes.slice(0, -1), result: undefined };
    expect(codeOf(applyPatch(stored, withoutSum, words, digest))).toBe('patch-checksum');
  });

  it.each([
    [null, 'The patch file'],
    [{ kind: 'stickwright-patch', version: 2 }, 'version must be 1'],
    [
      {
        kind: 'stickwright-patch',
        version: 1,
        map: 'x',
        sha256: 'a'.repeat(64),
        size: 9,
        changes: [{ offset: 0, old: '00', new: '0000', means: '' }],
      },
      'never inserts',
    ],
    [{ kind: 'stickwright-patch', version: 1, map: 'x', sha256: 'zz', size: 9, changes: [] }, 'sha256'],
  ])('is read from a file that holds one', (value, says) => {
    const read = parsePatch(value);
    expect(read.ok ? 'read' : read.problem.says).toContain(says);
  });
});

describe('regionsOf', () => {
  it('has no two regions of a bundled map overlap', () => {
    for (const map of bundledMaps) {
      const regions = regionsOf(map).toSorted((a, b) => a.offset - b.offset);
      for (const [index, region] of regions.slice(1).entries())
        expect(region.offset).toBeGreaterThanOrEqual(regions[index]!.offset + regions[index]!.length);
    }
  });
});
