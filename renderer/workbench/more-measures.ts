/** What a report measures of a stick beyond rest and gate: each in words, defined, with its uncertainty. */
import { formatQuantity } from '../../core/measure/format-quantity.ts';
import { count, percent, signed } from '../../core/plot/number-text.ts';
import type { StickId } from '../../core/pad/stick.ts';
import { numberCell, type Table } from '../kit/figures/table.ts';
import type { Report } from '../stick/judged-stick.ts';

export interface MeasureLine {
  readonly label: string;
  readonly definition: string;
  readonly value: string;
}

type StickReport = NonNullable<Report['sticks'][StickId]>;

const NONE = '—';

/** Lines of what was captured; timing always stands. */
export function moreMeasures(report: Report, stick: StickId): MeasureLine[] {
  const measured = report.sticks[stick];
  return [
    ...(measured === undefined ? [] : [...travelLines(measured), ...flickLines(measured), ...driftLines(measured)]),
    ...timingLines(report),
  ];
}

function travelLines({ travel }: StickReport): MeasureLine[] {
  if (travel === null) return [];
  const axes = (['x', 'y'] as const).flatMap((axis): MeasureLine[] => {
    const one = travel[axis];
    if (one === null) return [];
    return [
      {
        label: `${axis}: missing counts, longest run`,
        definition:
          'Counts that never occur inside the travelled range where their neighbours are well visited; a long run is a worn track.',
        value: `${plain(one.missing)}, ${plain(one.longestRun)}`,
      },
      {
        label: `${axis}: jumps, effective step`,
        definition:
          'Single readings that leap and come back; the step in which the counts come, 1 unless they show a comb.',
        value: `${plain(one.jumps)}, ${count(one.step)}`,
      },
    ];
  });
  return [
    ...axes,
    {
      label: 'turn of the part',
      definition: 'By how much a push along an axis comes out turned; below 5° it cannot be told from the hand.',
      value: travel.turnAngle === null ? NONE : `${formatQuantity(travel.turnAngle, travel.turnU95, 1)}°`,
    },
  ];
}

function flickLines({ flick, disturbance }: StickReport): MeasureLine[] {
  const moved = (disturbance ?? []).map(({ of, shift, u95 }): MeasureLine => ({
    label: `rest under ${of.replaceAll('-', ' ')}`,
    definition: 'Shift of the rest against the undisturbed one in counts, x and y, y up, with expanded uncertainties.',
    value: `${formatQuantity(shift.x, u95?.x ?? null, 1)}, ${formatQuantity(shift.y, u95?.y ?? null, 1)}`,
  }));
  if (flick === null) return moved;
  return [
    {
      label: `overshoot, of ${String(flick.count)} flicks`,
      definition:
        'How far the stick swings past its rest on the far side when let go from full tilt: largest, and the mean.',
      value: `${percent(flick.overshoot.largest)}, mean ${percent(flick.overshoot.mean)}`,
    },
    {
      label: 'time to settle',
      definition: 'From letting go until it stays at its rest: the median, and the longest.',
      value: `${millis(flick.settlingUs.p50)}, most ${millis(flick.settlingUs.max)}`,
    },
    ...moved,
  ];
}

function driftLines({ warmUp }: StickReport): MeasureLine[] {
  if (warmUp === null) return [];
  const steady = warmUp.steady === null ? 'cannot say' : warmUp.steady ? 'steady' : 'wait';
  return [
    {
      label: 'warm-up drift',
      definition:
        'Drift of the rest over the warm-up in counts a minute, x and y; wait until the last stretch is steady.',
      value: `${steady}: ${signed(warmUp.drift.x * 60, 1)}, ${signed(warmUp.drift.y * 60, 1)} in ${signed(warmUp.seconds, 0)} s`,
    },
  ];
}

function timingLines({ log }: Report): MeasureLine[] {
  const { interval, lost } = log;
  return [
    {
      label: 'reports, duplicates',
      definition: 'Reports of the log, and those equal to the one before byte for byte.',
      value: `${count(log.reports)}, ${count(log.duplicates)}`,
    },
    {
      label: 'interval, median and 99 %',
      definition: 'Time between reports as received here: a busy machine stamps late.',
      value: interval === null ? NONE : `${millis(interval.p50Us)}, ${millis(interval.p99Us)}`,
    },
    {
      label: 'longest interval',
      definition: 'The longest time without a report, as received here.',
      value: interval === null ? NONE : millis(interval.maxUs),
    },
    {
      label: 'lost reports',
      definition: 'Not known without a sequence field in the report: never guessed.',
      value: lost === null ? 'not known' : count(lost),
    },
  ];
}

function plain(value: number | null): string {
  return value === null ? NONE : count(value);
}

function millis(micros: number): string {
  return `${signed(micros / 1000, micros < 100_000 ? 2 : 0)} ms`;
}

export function moreTable(lines: readonly MeasureLine[]): Table {
  return {
    caption: 'Measures beyond rest and gate',
    heads: [
      { says: 'measure', spoken: true },
      { says: 'value', spoken: true, wraps: true },
    ],
    rows: lines.map(({ label, definition, value }) => [{ says: label, definition }, value]),
    selected: null,
  };
}

/** The table twin of the Allan deviation. */
export function allanTable(allan: NonNullable<StickReport['allan']>): Table {
  return {
    caption: 'Overlapping Allan deviation of the longest even dwell, counts',
    heads: ['averaged over', 'x', 'y'],
    rows: allan.tauUs.map((tau, index) => [
      millis(tau),
      ...[allan.x, allan.y].map((values) => numberCell(values?.[index], (value) => value.toPrecision(3))),
    ]),
    selected: null,
  };
}
