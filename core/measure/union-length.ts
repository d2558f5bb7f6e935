import type { CountRun } from './travel-measure.ts';

/** Length that stretches cover together, each counted once. */
export function unionLength(runs: readonly CountRun[]): number {
  let covered = 0;
  let end = Number.NEGATIVE_INFINITY;
  for (const { from, to } of runs.toSorted((a, b) => a.from - b.from)) {
    covered += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return covered;
}
