/** What `consumers` shows without `--json`: one row a consumer, a section a stick. */
import { formatPercent, NOTHING } from '../measure/format-quantity.ts';
import { row, type TableSection } from '../measure/table.ts';
import { STICKS } from '../pad/stick.ts';
import type { ConsumerCell, ConsumersReport } from './consumers-report.ts';

export function consumersTable(report: ConsumersReport): TableSection[] {
  const behind = report.driver === null ? '' : ` behind ${report.driver}`;
  return STICKS.flatMap((stick) => {
    const rows = report.consumers.flatMap(({ name, sticks }) => {
      const cell = sticks[stick];
      return cell === undefined ? [] : [row(name, cellText(cell))];
    });
    return rows.length === 0 ? [] : [{ title: `${stick} stick${behind}`, rows }];
  });
}

function cellText(cell: ConsumerCell): string {
  if (cell.says === null) return NOTHING;
  return [
    ...cell.says.map((word) => {
      if (word === 'leaks') return `leaks ${formatPercent(cell.leak)} % of full output`;
      if (word === 'slow in some directions') return `slow in ${String(cell.slow.length)} directions`;
      if (word === 'never reaches') return `never reaches in ${String(cell.neverReaches.length)} directions`;
      return word;
    }),
    ...driverWords(cell),
  ].join(', ');
}

function driverWords({ smallestDriverZone: zone, says }: ConsumerCell): string[] {
  if (zone === null || says?.includes('leaks') !== true) return [];
  return zone.observed === null
    ? ['no driver zone helps']
    : [`driver zone of ${formatPercent(zone.observed)} % hides it`];
}
