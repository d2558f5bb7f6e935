/**
 * The quantities that SciPy has too, on the same arrays in memory: each side times itself in a process of its own, start-up excluded,
 * median of five after one run to warm up. Prints ours/SciPy for each (aim: below 1). Skipped, saying so, without python3-scipy.
 * Run: `node tests/perf/numeric-against-scipy.ts`.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { convexHull } from '../../core/geometry/convex-hull.ts';
import { betaQuantile } from '../../core/numeric/beta-quantile.ts';
import { covariance2 } from '../../core/numeric/covariance.ts';
import { linearFit } from '../../core/numeric/linear-fit.ts';
import { takeQuantiles } from '../../core/numeric/quantile.ts';
import { createRandom } from '../../core/numeric/random.ts';
import { studentT } from '../../core/numeric/student-t.ts';
import { standardDeviation } from '../../core/numeric/variance.ts';

const RUNS = 5;
const POINTS = 100_000;

/** Where a result goes, so that no work can be left out as useless. */
let sink = 0;

function use(value: number | undefined): void {
  sink += value ?? 0;
}

function secondsOf(task: () => void): number {
  task();
  const runs = Array.from({ length: RUNS }, () => {
    const from = performance.now();
    task();
    return (performance.now() - from) / 1000;
  });
  return runs.toSorted((a, b) => a - b)[RUNS >> 1] ?? Number.NaN;
}

const random = createRandom(20_261_125);
const values = Float64Array.from({ length: 2 * POINTS }, () => 2048 + 300 * random.normal());
const x = values.filter((_, i) => i % 2 === 0);
const y = values.filter((_, i) => i % 2 === 1);
const few = Array.from({ length: 1000 }, (_, k) => 0.01 + (0.98 * k) / 999);

const quantities: Readonly<Record<string, () => void>> = {
  'standard deviation': () => use(standardDeviation(values)),
  quantiles: () => {
    for (const value of takeQuantiles(values.slice(), [0.05, 0.5, 0.95])) use(value);
  },
  covariance: () => use(covariance2(values)?.xy),
  'line fit': () => use(linearFit(x, y)?.slope),
  'convex hull': () => use(convexHull(values).length),
  '1,000 t quantiles': () => few.forEach((share) => use(studentT(share, 11.5))),
  '1,000 beta quantiles': () => few.forEach((share) => use(betaQuantile(share, 3, 22))),
};

const file = path.resolve(import.meta.dirname, '../../out/perf/numbers.f64');
mkdirSync(path.dirname(file), { recursive: true });
writeFileSync(file, values);
const script = path.join(import.meta.dirname, 'time_with_scipy.py');
const run = spawnSync('/usr/bin/python3', [script, file], { encoding: 'utf8' });
if (run.status === 0) {
  const theirs = JSON.parse(run.stdout) as Record<string, number>;
  const ratios = Object.entries(quantities).map(([name, task]) => [
    name,
    secondsOf(task) / (theirs[name] ?? Number.NaN),
  ]);
  if (!Number.isFinite(sink)) throw new Error('A quantity came out as no number.');
  console.log(
    JSON.stringify({ figure: `time against SciPy, ${POINTS} points (aim: below 1)`, ...Object.fromEntries(ratios) }),
  );
} else {
  console.log(JSON.stringify({ figure: 'time against SciPy', skipped: 'python3-scipy is not installed' }));
}
