/** Checksums that are wrong before a plan, and those that hang together with what a plan changes. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import type { Checksum, MemoryMap } from '../../../core/image/memory-map.ts';
import { planCarry, planPatch } from '../../../core/image/plan-patch.ts';
import { settleOrder } from '../../../core/image/settle-order.ts';
import type { StickCodec } from '../../../core/image/stick-codec.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import type { Result } from '../../../core/result.ts';
import { invertPatch } from '../../support/invert-patch.ts';
import { bothMappings, leftMapping, makeImage } from '../../support/make-image.ts';

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const codec: StickCodec = { form: 'words', bits: 16, endian: 'big', values: 'minCentreMax' };
const moved: PadMapping = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } } };
const accepted = { acceptsWrongChecksum: true };

/** Factory at 0x10 with its sum at 0x40, user at 0x60 with its sum at 0x90 and its marker at 0xa0. */
function mapWith(factory: Checksum['covers'], user: Checksum['covers']): MemoryMap {
  const sumAt = (offset: number, covers: Checksum['covers']): Checksum => ({
    kind: 'crc16modbus',
    offset,
    endian: 'little',
    covers,
  });
  const sticks = (at: number) => ({ left: { offset: at, codec }, right: { offset: at + 12, codec } });
  return {
    kind: 'stickwright-memory-map',
    version: 1,
    id: 'two-sums',
    name: 'Two sums',
    proof: 'unproven',
    size: 256,
    fingerprint: [],
    layers: {
      factory: { marker: null, checksum: sumAt(0x40, factory), sticks: sticks(0x10) },
      user: {
        marker: { offset: 0xa0, valid: 'c35a', empty: 'ffff' },
        checksum: sumAt(0x90, user),
        sticks: sticks(0x60),
      },
    },
    hosts: [],
    volatile: [],
    plausible: { bits: 12, leastSpan: 100 },
  };
}

const apart = mapWith({ offset: 0x10, length: 24 }, { offset: 0x60, length: 24 });

function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}
function flip(image: Uint8Array, at: number): Uint8Array {
  return Uint8Array.from(image, (byte, index) => (index === at ? byte ^ 1 : byte));
}
function orderOf(map: MemoryMap): string[] {
  return good(settleOrder(map)).map(({ name }) => name);
}

describe('settleOrder', () => {
  it('puts a marker behind its checksum, and before it where the checksum covers it', () => {
    expect(orderOf(apart)).toEqual(['factory checksum', 'user checksum', 'user marker']);
    expect(orderOf(mapWith({ offset: 0x10, length: 24 }, { offset: 0xa0, length: 2 }))).toEqual([
      'factory checksum',
      'user marker',
      'user checksum',
    ]);
  });

  it('follows a chain: the marker, the checksum over it, the checksum over that one', () => {
    expect(orderOf(mapWith({ offset: 0x60, length: 0x32 }, { offset: 0x91 + 1, length: 0x20 }))).toEqual([
      'user marker',
      'user checksum',
      'factory checksum',
    ]);
  });

  it('refuses a circle', () => {
    const circle = settleOrder(mapWith({ offset: 0x60, length: 0x32 }, { offset: 0x10, length: 0x32 }));
    expect(circle).toMatchObject({ ok: false, problem: { code: 'memory-map' } });
  });
});

describe('a plan for a memory with a checksum that is wrong already', () => {
  const image = makeImage(apart, { factory: bothMappings, user: bothMappings });

  it.each([
    ['the layer that is planned for', 0x40],
    ['the other layer', 0x90],
  ])('is refused, for the map is probably wrong: %s', (_, at) => {
    const refused = planPatch(flip(image, at), apart, 'factory', moved, digest);
    expect(refused).toMatchObject({ ok: false, problem: { code: 'patch-wrong-checksum' } });
    expect(refused.ok ? '' : refused.problem.says).toContain('the map two-sums is probably wrong');
    const carry = { from: 'factory', to: 'user', sticks: ['left'] } as const;
    expect(planCarry(flip(image, at), apart, carry, digest)).toMatchObject({
      problem: { code: 'patch-wrong-checksum' },
    });
  });

  it('is made where that is accepted, and puts its own layer right', () => {
    const wrong = flip(image, 0x40);
    const plan = good(planPatch(wrong, apart, 'factory', moved, digest, accepted));
    expect(applyPatch(wrong, plan, apart, digest)).toMatchObject({ problem: { code: 'patch-wrong-checksum' } });
    const after = good(applyPatch(wrong, plan, apart, digest, accepted));
    expect(decodeLayers(after, apart).map(({ checksum }) => checksum?.good)).toEqual([true, true]);
    const inverse = invertPatch(plan, after, digest);
    expect(applyPatch(after, inverse, apart, digest)).toMatchObject({ problem: { code: 'patch-wrong-checksum' } });
    expect(good(applyPatch(after, inverse, apart, digest, accepted))).toEqual(wrong);
  });

  it('does not bring another layer into use that the pad passes over', () => {
    const wide = mapWith({ offset: 0x10, length: 24 }, { offset: 0x10, length: 24 });
    const wrong = flip(makeImage(wide, { factory: bothMappings, user: bothMappings }), 0x90);
    const plan = good(planPatch(wrong, wide, 'factory', moved, digest, accepted));
    const after = good(applyPatch(wrong, plan, wide, digest, accepted));
    expect(decodeLayers(after, wide).map(({ checksum }) => checksum?.good)).toEqual([true, false]);
    expect(after.subarray(0x90, 0x92)).toEqual(wrong.subarray(0x90, 0x92));
  });

  it('is made where the layer was never written', () => {
    const fresh = flip(makeImage(apart, { factory: bothMappings }), 0x90);
    const plan = good(planPatch(fresh, apart, 'user', bothMappings, digest));
    const after = good(applyPatch(fresh, plan, apart, digest));
    expect(decodeLayers(after, apart)[1]).toMatchObject({ marker: 'valid', checksum: { good: true } });
    expect(good(applyPatch(after, invertPatch(plan, after, digest), apart, digest))).toEqual(fresh);
  });
});

describe('a patch', () => {
  it('is refused where it leaves the checksum of another layer behind', () => {
    const wide = mapWith({ offset: 0x60, length: 0x32 }, { offset: 0x60, length: 24 });
    const image = makeImage(wide, { user: bothMappings, factory: bothMappings });
    // The support sums the factory before the user layer that it covers.
    const sound = good(
      applyPatch(image, good(planPatch(image, wide, 'factory', moved, digest, accepted)), wide, digest, accepted),
    );
    const plan = good(planPatch(sound, wide, 'user', moved, digest));
    expect(plan.changes.at(-1)?.means).toContain('factory checksum');
    const cut = { ...plan, changes: plan.changes.slice(0, -1), result: undefined };
    expect(applyPatch(sound, cut, wide, digest)).toMatchObject({ problem: { code: 'patch-checksum' } });
  });

  it('is refused for a map whose marker is no hex', () => {
    const layers = {
      ...apart.layers,
      user: { ...apart.layers.user!, marker: { offset: 0xa0, valid: 'zz', empty: null } },
    };
    const image = makeImage(apart, { factory: bothMappings, user: bothMappings });
    const plan = planPatch(image, { ...apart, layers }, 'user', moved, digest);
    expect(plan).toMatchObject({ ok: false, problem: { code: 'memory-map' } });
  });
});
