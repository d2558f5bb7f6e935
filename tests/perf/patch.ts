/** Milliseconds to plan a patch for an image of 16 MiB and to apply it, median of several runs. Run: `node tests/perf/patch.ts`. */
import { createHash } from 'node:crypto';
import { applyPatch } from '../../core/image/apply-patch.ts';
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { planPatch } from '../../core/image/plan-patch.ts';
import { bothMappings, leftMapping, makeImage, rightMapping } from '../support/make-image.ts';

const RUNS = 7;
const map: MemoryMap = { ...(bundledMaps[0] as MemoryMap), size: 16 * 1024 * 1024 };
const image = makeImage(map, { factory: bothMappings, user: bothMappings });
const wished = { left: { ...leftMapping, x: { min: 800, centre: 2070, max: 3350 } }, right: rightMapping };
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const runs = Array.from({ length: RUNS }, () => {
  const from = performance.now();
  const patch = planPatch(image, map, 'factory', wished, digest);
  const planned = performance.now();
  if (!patch.ok || !applyPatch(image, patch.value, map, digest).ok) throw new Error('The plan was refused.');
  return { plan: planned - from, apply: performance.now() - planned };
});
const median = (values: number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
console.log(
  JSON.stringify({
    figure: 'patch of an image of 16 MiB (aim: plan and apply below 200 ms)',
    planMillis: median(runs.map(({ plan }) => plan)),
    applyMillis: median(runs.map(({ apply }) => apply)),
  }),
);
