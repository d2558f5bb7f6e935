/** Seconds to look for both sticks in an image of 512 KiB with every codec, median of several runs. Run: `node tests/perf/finder.ts`. */
import { bundledMaps } from '../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../core/image/memory-map.ts';
import { findPlaces } from '../../core/image/rank-places.ts';
import { bothMappings, makeImage } from '../support/make-image.ts';

const RUNS = 5;
const map: MemoryMap = { ...(bundledMaps[0] as MemoryMap), size: 512 * 1024 };
const image = makeImage(map, { factory: bothMappings });
const seconds = Array.from({ length: RUNS }, () => {
  const from = performance.now();
  if (findPlaces(image, bothMappings)[0]?.readings[0]?.sticks.left?.offset !== 0x2c10)
    throw new Error('The place was not found.');
  return (performance.now() - from) / 1000;
});
console.log(
  JSON.stringify({
    figure: 'finder on an image of 512 KiB, all codecs (aim: below 2 s)',
    seconds: seconds.toSorted((a, b) => a - b)[RUNS >> 1],
  }),
);
