/** What `measure` shows without `--json`: the log, then each stick, then the inputs; what was not captured has no section but rest and rim. */
import { STICKS, type StickId } from '../pad/stick.ts';
import { formatQuantity, NOTHING } from './format-quantity.ts';
import { allanRows, disturbanceRows, flickRows, warmUpRows } from './further-table.ts';
import { inputsRows } from './inputs-table.ts';
import type { StickReport, TrackMeasures } from './measure-report.ts';
import { restRows } from './rest-table.ts';
import { rimRows } from './rim-table.ts';
import { row, type TableRow, type TableSection } from './table.ts';
import type { LogMeasure } from './timing.ts';
import { travelRows } from './travel-table.ts';

const mappingWords = { file: 'the mapping file', stored: "the pad's stored mapping", range: 'the logical range' };

export function measureTable(report: TrackMeasures): TableSection[] {
  return [
    { title: 'log', rows: logRows(report.log) },
    ...STICKS.flatMap((stick) => {
      const measured = report.sticks[stick];
      return measured === undefined ? [] : stickSections(stick, measured, report.log);
    }),
    ...(report.inputs === null ? [] : [{ title: 'inputs', rows: inputsRows(report.inputs) }]),
  ];
}

function stickSections(stick: StickId, measured: StickReport, log: LogMeasure): TableSection[] {
  const { rest, rim, travel, flick, disturbance, warmUp, allan } = measured;
  const section = <T>(name: string, of: T | null, rows: (of: T) => TableRow[]): TableSection[] =>
    of === null ? [] : [{ title: `${stick} stick, ${name}`, rows: rows(of) }];
  const head = [
    row('deflections under', mappingWords[measured.mappingFrom]),
    row('captures', measured.captures),
    row('domain', log.domain),
    ...measured.lacks.map(({ says }) => row('missing', says)),
  ];
  return [
    { title: `${stick} stick`, rows: head },
    { title: `${stick} stick, rest`, rows: rest === null ? [row('rest', 'no settled release')] : restRows(rest) },
    { title: `${stick} stick, rim`, rows: rim === null ? [row('rim', 'no turn')] : rimRows(rim) },
    ...section('travel', travel, travelRows),
    ...section('flick', flick, flickRows),
    ...section('disturbance', disturbance, disturbanceRows),
    ...section('warm-up', warmUp, warmUpRows),
    ...section('noise over time', allan, allanRows),
  ];
}

function logRows(log: LogMeasure): TableRow[] {
  const { interval } = log;
  const quantiles =
    interval === null
      ? NOTHING
      : [interval.p50Us, interval.p95Us, interval.p99Us].map((us) => formatQuantity(us, null, 0)).join(', ');
  return [
    row('duration', formatQuantity(log.durationUs / 1e6, null, 3), 's'),
    row('reports', String(log.reports)),
    row('lost', log.lost === null ? 'not known' : String(log.lost)),
    row('rate', formatQuantity(log.rateHz, null, 1), 'Hz'),
    row('interval as received, median, 95 %, 99 %', quantiles, 'µs'),
    row('interval as received, longest', interval === null ? NOTHING : String(interval.maxUs), 'µs'),
    row('duplicates', String(log.duplicates)),
    row('damaged lines', String(log.damaged)),
    row('ended in order', log.ended === null ? 'not known' : log.ended ? 'yes' : 'no'),
    row('stage', log.stage ?? NOTHING),
    ...(log.unread === null
      ? []
      : [row('could not be decoded', `${log.unread.reports}: ${log.unread.says ?? NOTHING}`)]),
  ];
}
