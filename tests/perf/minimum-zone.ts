/**
 * Milliseconds of the minimum zone, median of five: 100,000 points with 0.1 % noise, all points on the hull, and how the first grows from
 * 1,000 to 1,000,000 points; and of the maximum inscribed circle of an exact ellipse, whose best centre is hardly sharp. Run: `node tests/perf/minimum-zone.ts`.
 */
import { maximumInscribed } from '../../core/geometry/maximum-inscribed.ts';
import { minimumZone } from '../../core/geometry/minimum-zone.ts';
import { createRandom } from '../../core/numeric/random.ts';

const RUNS = 5;

function ring(count: number, noise: number, height = 1): Float64Array {
  const random = createRandom(7);
  const points = new Float64Array(2 * count);
  for (let k = 0; k < count; k += 1) {
    const angle = (2 * Math.PI * k) / count;
    const radius = 1500 * (1 + noise * random.normal());
    points[2 * k] = 2048 + radius * Math.cos(angle);
    points[2 * k + 1] = 2048 + height * radius * Math.sin(angle);
  }
  return points;
}

function millisOf(points: Float64Array, find: (points: Float64Array) => object | null = minimumZone): number {
  const runs = Array.from({ length: RUNS }, () => {
    const from = performance.now();
    if (find(points) === null) throw new Error('The search gave up.');
    return performance.now() - from;
  });
  return runs.toSorted((a, b) => a - b)[RUNS >> 1] ?? Number.NaN;
}

millisOf(ring(20_000, 0.001));
const growth = [1_000, 10_000, 100_000, 1_000_000].map((count) => [`millis${count}`, millisOf(ring(count, 0.001))]);
console.log(
  JSON.stringify({
    figure: 'minimum zone, points with 0.1 % noise (aim: 100,000 below 50 ms)',
    ...Object.fromEntries(growth),
  }),
);
const onHull = [1_000, 10_000, 100_000].map((count) => [`millis${count}`, millisOf(ring(count, 0))]);
console.log(JSON.stringify({ figure: 'minimum zone, all points on the hull', ...Object.fromEntries(onHull) }));
const ellipses = [1_000, 10_000, 100_000].map((count) => [
  `millis${count}`,
  millisOf(ring(count, 0, 0.9), maximumInscribed),
]);
console.log(JSON.stringify({ figure: 'maximum inscribed circle, exact ellipse', ...Object.fromEntries(ellipses) }));
