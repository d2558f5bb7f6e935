/** What `zones` shows without `--json`: a section of each stick. */
import { formatPercent, NOTHING } from '../measure/format-quantity.ts';
import { row, type TableRow, type TableSection } from '../measure/table.ts';
import { STICKS } from '../pad/stick.ts';
import type { ZoneAnswer } from './chain.ts';
import type { ZonesReport } from './zones-report.ts';

export function zonesTable(report: ZonesReport): TableSection[] {
  return STICKS.flatMap((stick) => {
    const answer = report.sticks[stick];
    return answer === undefined ? [] : [{ title: `${stick} stick behind ${report.chain}`, rows: zoneRows(answer) }];
  });
}

function zoneRows(answer: ZoneAnswer): TableRow[] {
  const { leaks, smallestZone, unreached } = answer;
  return [
    row('rest', answer.hides ?? 'no settled release'),
    row('leaking releases', leaks === null ? NOTHING : `${leaks.leaking} of ${leaks.releases}`),
    row('share that leaks, at most (95 %)', formatPercent(leaks?.upperBound95 ?? null, 1), '% of releases'),
    row('largest output at rest', formatPercent(leaks?.largestOutput ?? null), '% of full'),
    row('smallest zone for what was seen', formatPercent(smallestZone?.observed ?? null), '% of full'),
    row('smallest zone for 99 % of releases', formatPercent(smallestZone?.tolerance99 ?? null), '% of full'),
    row('onset, least', onsetText(answer, false), '% of full'),
    row('onset, largest', onsetText(answer, true), '% of full'),
    row('unevenness', formatPercent(answer.unevenness), '% of full'),
    row('directions without output before the gate', silentText(answer)),
    row('directions below the need', unreached === null ? NOTHING : anglesText(unreached)),
  ];
}

function onsetText({ onset }: ZoneAnswer, largest: boolean): string {
  const met = (onset ?? []).flatMap(({ angle, deflection }) => (deflection === null ? [] : [{ angle, deflection }]));
  const [first] = met.toSorted((a, b) => (largest ? b.deflection - a.deflection : a.deflection - b.deflection));
  return first === undefined ? NOTHING : `${formatPercent(first.deflection)} at ${first.angle}°`;
}

function silentText({ onset }: ZoneAnswer): string {
  if (onset === null) return NOTHING;
  return anglesText(onset.filter(({ deflection }) => deflection === null).map(({ angle }) => angle));
}

function anglesText(angles: readonly number[]): string {
  return angles.length === 0 ? 'none' : angles.map((angle) => `${angle}°`).join(' ');
}
