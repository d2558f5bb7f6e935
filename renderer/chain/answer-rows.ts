/** What a chain does with the measured stick, as rows of numbers under each mapping. */
import type { Tone } from '../../core/plot/figure.ts';
import { percent } from '../../core/plot/number-text.ts';
import type { ZoneAnswer } from '../../core/zones/chain.ts';
import type { Cell, Table } from '../kit/figures/table.ts';
import { sayStretches } from './direction-stretches.ts';

/** An answer, and whose it is. */
export interface Answered {
  readonly tone: Tone;
  readonly zones: ZoneAnswer;
}

const UNKNOWN = '—';

export function answersTable(answered: readonly Answered[]): Table {
  return {
    caption: 'What the chain does with the measured stick under each mapping',
    heads: [
      { says: 'answer', spoken: true },
      ...answered.map(({ tone }) => ({ says: tone, tone, wraps: true as const })),
    ],
    rows: answerRows(answered.map(({ zones }) => zones)),
    selected: null,
  };
}

function answerRows(answers: readonly ZoneAnswer[]): Cell[][] {
  const row = (label: string, definition: string, cell: (answer: ZoneAnswer) => Cell | null): Cell[] => [
    { says: label, definition },
    ...answers.map((answer) => cell(answer) ?? UNKNOWN),
  ];
  return [
    row(
      'hides the rest',
      'Hidden: nothing leaked and the tolerance radius (99 % of releases with 95 % confidence) lies within the zone.',
      ({ hides }) => hides,
    ),
    row(
      'leaks, at most',
      'Releases whose settled rest comes out as anything but zero, and below which share of all releases leak, one-sided at 95 %.',
      ({ leaks }) =>
        leaks === null
          ? null
          : { says: `${leaks.leaking} of ${leaks.releases}`, beside: `≤\u00a0${percent(leaks.upperBound95)}` },
    ),
    row(
      'largest at rest',
      'Largest output of a settled rest as a share of full output: at that share of its full speed a view turns by itself.',
      ({ leaks }) => (leaks === null ? null : percent(leaks.largestOutput)),
    ),
    row(
      'smallest zone, seen',
      'The smallest plain radial zone in place of this chain that hides every settled reading seen.',
      ({ smallestZone }) => (smallestZone === null ? null : percent(smallestZone.observed)),
    ),
    row(
      'smallest zone, 99 %',
      'The one that hides the tolerance radius: 99 % of releases with 95 % confidence. Null with fewer releases than the limit asks for.',
      ({ smallestZone }) => (smallestZone?.tolerance99 == null ? null : percent(smallestZone.tolerance99)),
    ),
    row('least onset', 'Smallest push from the rest, over all directions, that gives any output.', ({ onset }) =>
      edge(onset, Math.min),
    ),
    row('largest onset', 'Largest push from the rest, over all directions, before any output.', ({ onset }) =>
      edge(onset, Math.max),
    ),
    row('unevenness', 'Largest onset less the smallest.', ({ unevenness }) =>
      unevenness === null ? null : percent(unevenness),
    ),
    row('least at the gate', 'Smallest output at the gate over the covered directions.', ({ gate }) => {
      const outputs = (gate ?? []).flatMap(({ output, covered }) => (covered && output !== null ? [output] : []));
      return outputs.length === 0 ? null : Math.min(...outputs).toFixed(3);
    }),
    row(
      'below the need',
      'Covered directions in which the output at the gate stays below the needed output.',
      ({ unreached }) => (unreached === null ? null : unreached.length === 0 ? 'none' : sayStretches(unreached)),
    ),
  ];
}

function edge(onset: ZoneAnswer['onset'], pick: (...values: number[]) => number): Cell | null {
  const met = (onset ?? []).flatMap(({ angle, deflection }) => (deflection === null ? [] : [{ angle, deflection }]));
  if (met.length === 0) return null;
  const value = pick(...met.map(({ deflection }) => deflection));
  const at = met.find(({ deflection }) => deflection === value)?.angle ?? 0;
  return { says: percent(value), beside: `at ${at}°` };
}
