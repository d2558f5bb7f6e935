/**
 * The program's own repeatability: ten seeded surveys of one simulated pad, each measured; per measure the standard deviation over the
 * surveys, pooled over both sticks, as the file core/measure/repeatability-table.ts. Run after a build:
 * `node tests/long/gauge-study.ts > core/measure/repeatability-table.ts`.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { studyGauge } from '../../core/numeric/gauge-study.ts';
import type { StickReport } from '../../core/measure/measure-report.ts';

const SURVEYS = 10;
const FIRST_SEED = 20_261_125;
const commandLine = path.resolve(import.meta.dirname, '../../out/main/command-line.js');
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-'));

/** What is studied; counts are those of the pad's 12-bit fields. */
const measures: Readonly<Record<string, (report: StickReport) => number | null | undefined>> = {
  restX: ({ rest }) => rest?.point.x,
  restY: ({ rest }) => rest?.point.y,
  offset: ({ rest }) => rest?.offset.magnitude,
  toleranceRadius: ({ rest }) => rest?.toleranceRadius,
  leastReach: ({ rim }) => rim?.leastReach?.value,
  meanRadialError: ({ rim }) => rim?.meanRadialError,
  ellipseMajor: ({ rim }) => rim?.ellipse?.a,
  ellipseMinor: ({ rim }) => rim?.ellipse?.b,
  skew: ({ rim }) => rim?.skew,
  roundness: ({ rim }) => rim?.roundness?.minimumZone,
  circleX: ({ rim }) => rim?.circle?.x,
  circleY: ({ rim }) => rim?.circle?.y,
};

function command(args: readonly string[]): string {
  const run = spawnSync(process.execPath, [commandLine, ...args], { encoding: 'utf8', maxBuffer: 1e9 });
  if (run.status !== 0) throw new Error(run.stderr);
  return run.stdout;
}

function measureOne(index: number): readonly StickReport[] {
  const log = path.join(folder, `${index}.padlog`);
  command(['survey', '--demo', 'healthy', '--seed', String(FIRST_SEED + index), '--out', log]);
  const { sticks } = JSON.parse(command(['measure', log, '--json'])) as {
    sticks: Record<'left' | 'right', StickReport>;
  };
  return [sticks.left, sticks.right];
}

const surveys = Array.from({ length: SURVEYS }, (_, index) => measureOne(index));
rmSync(folder, { recursive: true });
console.log(`/**
 * Standard deviation of each measure over ${SURVEYS} surveys of one simulated pad with 12-bit counts, seeds from ${FIRST_SEED} on, pooled over
 * both sticks. Positions and lengths in counts, skew in degrees, the rest fractions. Made by tests/long/gauge-study.ts.
 */
export const repeatabilityTable = {`);
for (const [name, of] of Object.entries(measures)) {
  const readings = [0, 1].map((stick) => surveys.map((survey) => of(survey[stick] as StickReport) ?? Number.NaN));
  const study = studyGauge([readings]);
  if (study === null) throw new Error(`${name} was not measured in every survey.`);
  console.log(`  ${name}: ${Math.sqrt(study.variances.repeatability).toPrecision(3)},`);
}
console.log('} as const;');
