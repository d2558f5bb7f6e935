/** Where the evidence of a finding lies, in words: what the marks of the figures say. */
import type { FindingShows } from '../../core/findings/finding.ts';
import { runsOf } from '../../core/geometry/directions.ts';
import { stretchName } from '../../core/plot/coverage-stretches.ts';
import { count } from '../../core/plot/number-text.ts';

/** Stretches named of each kind at most; the rest is counted. */
const MOST = 4;

/** E.g. `directions 265–280°; x counts 120–180; 12.3–12.8 s of the log`; empty where nothing is shown. */
export function shownText({ directions, counts, spans }: FindingShows): string {
  const angles = runsOf(directions).map(stretchName);
  const runs = (['x', 'y'] as const).map((axis) => ({
    axis,
    names: joined(counts.filter((one) => one.axis === axis)).map(({ from, to }) => range(count(from), count(to))),
  }));
  const times = spans.map(({ startUs, endUs }) => range(seconds(startUs), seconds(endUs)));
  return [
    ...(angles.length === 0 ? [] : [`directions ${some(angles)}`]),
    ...runs.flatMap(({ axis, names }) => (names.length === 0 ? [] : [`${axis} counts ${some(names)}`])),
    ...(times.length === 0 ? [] : [`${some(times)} s of the log`]),
  ].join('; ');
}

interface Run {
  readonly from: number;
  readonly to: number;
}

/** In their order along the axis; what overlaps is one stretch, as it is drawn. */
function joined(runs: readonly Run[]): Run[] {
  return runs
    .toSorted((a, b) => a.from - b.from)
    .reduce<Run[]>((stretches, run) => {
      const last = stretches.at(-1);
      if (last === undefined || run.from > last.to) return [...stretches, run];
      return [...stretches.slice(0, -1), { from: last.from, to: Math.max(last.to, run.to) }];
    }, []);
}

function some(names: readonly string[]): string {
  const shown = names.slice(0, MOST).join(', ');
  return names.length > MOST ? `${shown} and ${String(names.length - MOST)} more` : shown;
}

function range(from: string, to: string): string {
  return from === to ? from : `${from}–${to}`;
}

function seconds(micros: number): string {
  return (micros / 1e6).toFixed(1);
}
