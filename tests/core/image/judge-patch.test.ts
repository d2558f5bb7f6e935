/** Numbers that are carried within the image that a patch is for are its own; all others are judged by whose they are. */
import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { judgePatch } from '../../../core/image/judge-patch.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { Patch } from '../../../core/image/patch.ts';
import { planCarry, planPatch } from '../../../core/image/plan-patch.ts';
import { demoPads } from '../../../core/pad/demo-profile.ts';
import type { Result } from '../../../core/result.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../../support/make-image.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const image = makeImage(packed, { factory: bothMappings });
const ours = { ...demoPads.sensor, serial: 'ours', unit: null };
const theirs = { ...ours, serial: 'theirs' };

function judged(plan: Result<Patch>, part: Partial<Patch> = {}, map = packed): string {
  if (!plan.ok) return plan.problem.code;
  const asks = judgePatch(image, { ...plan.value, ...part }, map, [ours]);
  return asks.ok ? asks.value.map(({ code }) => code).join(' ') : asks.problem.code;
}

it.each([
  ['carried', bothMappings, ''],
  [
    'one of them changed',
    { ...bothMappings, left: { ...leftMapping, y: { ...leftMapping.y, max: 3236 } } },
    'unknown-pad',
  ],
  ['those of the other stick', { left: rightMapping, right: leftMapping }, 'unknown-pad'],
])('numbers of which no pad is known, %s', (_name, mappings, asks) => {
  expect(judged(planPatch(image, packed, 'user', mappings, digest))).toBe(asks);
});

it('keeps to what is refused, asks for a restore, and passes over a map of another size', () => {
  const carry = planCarry(image, packed, { from: 'factory', to: 'user', sticks: ['left', 'right'] }, digest);
  expect(judged(carry)).toBe('');
  expect(judged(carry, { pad: theirs })).toBe('numbers-other-pad');
  expect(judged(carry, { domain: 'reported' })).toBe('numbers-reported');
  expect(judged(carry, { restores: true })).toBe('unknown-pad');
  expect(judged(carry, {}, words)).toBe('unknown-pad');
});
