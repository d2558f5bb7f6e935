/** What a finished survey holds, stick by stick, for the summary at its end. */
import { stretchName, coverageStretches } from '../../core/plot/coverage-stretches.ts';
import { count } from '../../core/plot/number-text.ts';
import { measureRest } from '../../core/measure/rest.ts';
import { measureRim } from '../../core/measure/rim.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import { directionCount } from '../../core/geometry/directions.ts';
import type { Reply } from '../../shared/contract.ts';
import type { Table } from '../kit/figures/table.ts';

export type SurveyDetails = Reply<'surveys.open'>;

export interface StickSummary {
  readonly stick: StickId;
  readonly releases: number;
  /** E.g. "2071, 2029", or null without releases. */
  readonly rest: string | null;
  readonly turns: { readonly clockwise: number; readonly counterClockwise: number };
  /** Directions covered. */
  readonly covered: number;
  readonly thin: number;
  /** Stretches that are not covered, named. */
  readonly open: readonly string[];
  /** Sweeps and flicks that could be read; 0 where none were taken. */
  readonly sweeps: number;
  readonly flicks: number;
}

export function summariseSurvey(details: SurveyDetails): StickSummary[] {
  return STICKS.flatMap((stick) => {
    const found = details.sticks[stick];
    if (found === undefined) return [];
    const rest = measureRest(found.evidence, found.current);
    const rim = measureRim(found.evidence, found.current);
    const states = rim?.directions.map((direction) => direction.state) ?? [];
    return [
      {
        stick,
        releases: rest?.releases ?? 0,
        rest:
          rest === null || rest.releases === 0 ? null : `${count(round(rest.point.x))}, ${count(round(rest.point.y))}`,
        turns: rim?.turns ?? { clockwise: 0, counterClockwise: 0 },
        covered: states.filter((state) => state === 'covered').length,
        thin: states.filter((state) => state === 'thin').length,
        open: coverageStretches(states, 'none').map(stretchName),
        sweeps: details.report.sticks[stick]?.travel?.sweeps ?? 0,
        flicks: details.report.sticks[stick]?.flick?.count ?? 0,
      },
    ];
  });
}

export function summaryTable(sticks: readonly StickSummary[]): Table {
  return {
    caption: 'What was taken of each stick',
    heads: [
      'stick',
      'releases',
      'mean rest x, y',
      'turns clockwise',
      'counter-clockwise',
      `covered, of ${directionCount}`,
      'thin',
      { says: 'not covered', wraps: true },
      'sweeps',
      'flicks',
    ],
    rows: sticks.map(({ stick, releases, rest, turns, covered, thin, open, sweeps, flicks }) => [
      stick,
      String(releases),
      rest ?? '–',
      String(turns.clockwise),
      String(turns.counterClockwise),
      String(covered),
      String(thin),
      covered + thin === 0 ? 'all' : open.length === 0 ? 'none' : open.join(', '),
      String(sweeps),
      String(flicks),
    ]),
    selected: null,
  };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
