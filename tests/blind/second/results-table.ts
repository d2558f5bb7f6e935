/** A run of the second blind test as a page of Markdown. */
import { confusionTable, type FaultRun } from '../confusion-table.ts';
import { sayAsked, sayCount } from '../demand.ts';
import { markdownTable } from '../markdown-table.ts';
import type { Curve } from './curves.ts';
import { faults } from './faults.ts';
import type { Result } from './result.ts';

export interface Run {
  readonly title: string;
  readonly curves: readonly Curve[];
  readonly results: readonly Result[];
  readonly losses: readonly string[];
  /** By kind of pad. */
  readonly confusion: ReadonlyMap<string, readonly FaultRun[]>;
}

export function resultsPage({ title, curves, results, losses, confusion }: Run): string {
  return [
    `# ${title}`,
    'Half-visible sizes, by the detection curves.',
    curvesTable(curves),
    'What was asked of the draws; `!` where the exact 95 % interval excludes it.',
    resultsTable(results),
    losses.map((line) => `- ${line}`).join('\n'),
    ...[...confusion].flatMap(([pad, runs]) => [
      `What was named first on ${pad}, 2 to 4 times the half-visible size.`,
      confusionTable(runs),
    ]),
  ]
    .filter((part) => part !== '')
    .map((part) => `${part}\n`)
    .join('\n');
}

function curvesTable(curves: readonly Curve[]): string {
  const pads = [...new Set(curves.map(({ pad }) => pad))];
  const names = [...new Set(curves.map(({ name }) => name))];
  const cell = (name: string, pad: string): string =>
    curves.find((one) => one.name === name && one.pad === pad)?.halfSeen?.toPrecision(3) ?? 'none';
  const wanted = (name: string): string =>
    String(curves.find((one) => one.name === name && one.wanted !== null)?.wanted?.size ?? '');
  const rows = names.map((name) => [
    `${name}, ${faults[name].unit}`,
    wanted(name),
    ...pads.map((pad) => cell(name, pad)),
  ]);
  return curves.length === 0 ? '' : markdownTable(['fault', 'wanted', ...pads], rows);
}

function resultsTable(results: readonly Result[]): string {
  const rows = results.flatMap(({ part, name, pad, shares }) =>
    shares.map(({ demand, isMissed, ...count }) => [
      `${part} ${name}`,
      pad,
      sayAsked(demand),
      `${isMissed ? '! ' : ''}${sayCount(demand, count)}`,
    ]),
  );
  return markdownTable(['cell', 'pad', 'asked', 'was'], rows);
}
