/** The ledger: each measure in words, defined, and under each mapping with its uncertainty. */
import type { Domain } from '../../core/pad/stick.ts';
import { MAPPING_NUMBERS, numberOf, type MappingNumber } from '../../core/mapping/mapping-number.ts';
import { count, NARROW, percent, signed } from '../../core/plot/number-text.ts';
import { isAtLeast } from '../stick/at-least.ts';
import { offsetUncertainty } from './offset-uncertainty.ts';
import type { Table } from '../kit/figures/table.ts';
import type { Standing } from '../stick/standing.ts';
import { edgeName } from './edge-name.ts';

export interface LedgerCell {
  /** The number, or `—` where it cannot be stated. */
  readonly value: string;
  /** Beside it in small letters: uncertainty, bound or direction. */
  readonly beside: string;
  /** The number itself and what a difference of two is written as; null where there is none to take. */
  readonly amount: { readonly is: number; readonly as: 'reach' | 'share' | 'whole' } | null;
}

export interface LedgerRow {
  readonly label: string;
  readonly definition: string;
  /** One for each standing, in order. */
  readonly cells: readonly LedgerCell[];
  /** The last standing's number less that of the one before it; empty where either has none. */
  readonly difference: string;
}

const UNKNOWN: LedgerCell = { value: '—', beside: '', amount: null };

interface Line {
  readonly label: string;
  readonly definition: string;
  readonly cell: (standing: Standing) => LedgerCell | null;
}

/** `domain` tells whether a reach at a field's limit is only "at least" known. */
export function ledgerRows(standings: readonly Standing[], domain: Domain): LedgerRow[] {
  const covered = standings[0]?.rim?.directions.filter((direction) => direction.covered).length ?? null;
  const releases = standings[0]?.rest?.releases ?? null;
  return linesFor(covered, releases, domain).map(({ label, definition, cell }) => {
    const cells = standings.map((standing) => cell(standing) ?? UNKNOWN);
    return { label, definition, cells, difference: differenceOf(cells) };
  });
}

/** Measures and numbers, mapping by mapping, with the difference of the last two. */
export function ledgerTable(standings: readonly Standing[], domain: Domain): Table {
  const measures = ledgerRows(standings, domain).map(({ label, definition, cells, difference }) => [
    { says: label, definition },
    ...cells.map(({ value, beside }) => ({ says: value, beside })),
    difference,
  ]);
  const numbers = MAPPING_NUMBERS.map((of) => [
    edgeName(of),
    ...standings.map(({ mapping }) => count(numberOf(mapping, of))),
    numberDifference(standings, of),
  ]);
  return {
    caption: 'Measures and numbers under each mapping',
    heads: [
      { says: 'measure', spoken: true },
      ...standings.map(({ tone }) => ({ says: tone, tone, width: '18%' })),
      { says: 'difference', tone: 'soft', title: differenceHead(standings), width: '17%' },
    ],
    rows: [...measures, ...numbers],
    selected: null,
  };
}

function differenceOf(cells: readonly LedgerCell[]): string {
  const [before, last] = [cells.at(-2)?.amount ?? null, cells.at(-1)?.amount ?? null];
  return before === null || last === null ? '' : writeDifference(last.is - before.is, last.as);
}

/** With its sign; nothing to see is `0`. */
export function writeDifference(difference: number, as: 'reach' | 'share' | 'whole'): string {
  const [value, decimals, unit] =
    as === 'share' ? [difference * 100, 1, `${NARROW}%`] : [difference, as === 'reach' ? 3 : 0, ''];
  const written = signed(value, decimals);
  if (Number(written.replace('\u2212', '-')) === 0) return '0';
  return `${value > 0 ? '+' : ''}${written}${unit}`;
}

function linesFor(covered: number | null, releases: number | null, domain: Domain): readonly Line[] {
  return [
    {
      label: 'least reach',
      definition:
        'Smallest magnitude of the free deflection at the gate over the covered directions, and where. Below 1 the pad never gives full output there. ≥: the count stands at the limit of its field, so it may be more.',
      cell: ({ rim }) => at(rim, rim?.leastReach, domain, 'reach'),
    },
    {
      label: 'mean radial error',
      definition: 'Mean of |seen − 1| over the covered directions, where seen is the limited reach that a host gets.',
      cell: ({ rim }) => number(rim?.meanRadialError, 'share'),
    },
    {
      label: covered === null ? 'full reach' : `full reach, of ${covered}`,
      definition: 'Covered directions in which the reach at the gate is 1 or more.',
      cell: ({ rim }) =>
        number(
          rim === null || rim.fullReachShare === null ? null : Math.round(rim.fullReachShare * (covered ?? 0)),
          'whole',
        ),
    },
    {
      label: 'overreach',
      definition:
        'Largest reach − 1 and where: how much movement before the gate already gives full output. Negative where full output is never met. ≥: the count stands at the limit of its field, so it may be more.',
      cell: ({ rim }) => at(rim, rim?.overreach, domain, 'share'),
    },
    {
      label: 'rest offset',
      definition:
        'Magnitude of the deflection of the mean rest point under this mapping, with its expanded uncertainty at 95 % (JCGM 100).',
      cell: ({ rest, mapping }) => {
        if (rest === null) return null;
        const u95 = offsetUncertainty(rest, mapping);
        const offset = number(rest.offset.magnitude, 'share');
        return offset && { ...offset, beside: u95 === null ? '' : `±${signed(u95 * 100, 1)}` };
      },
    },
    {
      label: 'rest scatter',
      definition: 'Radius of the smallest circle around all rest points, in raw counts: the same under every mapping.',
      cell: ({ rest }) =>
        rest === null ? null : { value: signed(rest.enclosing.radius, 1), beside: 'counts', amount: null },
    },
    {
      label: 'tolerance radius',
      definition:
        'Largest deflection over the region that holds 99 % of releases with 95 % confidence, plus what readings stray within a dwell. Rests on normality; null with fewer releases than the limit asks for.',
      cell: ({ rest }) => number(rest?.toleranceRadius, 'share'),
    },
    {
      label: 'smallest zone, seen',
      definition:
        'The smallest plain radial zone on the deflection of the pad, in place of this zone, that hides every settled reading seen.',
      cell: ({ zones }) => number(zones.smallestZone?.observed, 'share'),
    },
    {
      label: 'cost in onset',
      definition:
        'Least and largest push that the smallest zone seen swallows over all directions: what hiding the rest costs at best.',
      cell: ({ zones }) => {
        const costs = zones.smallestZone?.costs.observed;
        if (costs === undefined) return null;
        return { value: `${signed(costs.least * 100, 1)}–${percent(costs.largest)}`, beside: '', amount: null };
      },
    },
    {
      label: releases === null ? 'leaks' : `leaks, of ${releases}`,
      definition:
        'Releases whose settled rest comes out of the zone as anything but zero, and below which share of all releases leak, one-sided at 95 % (0.95 quantile of Beta(k + 1, n − k)).',
      cell: ({ zones: { leaks } }) =>
        leaks === null
          ? null
          : {
              value: String(leaks.leaking),
              beside: `≤ ${percent(leaks.upperBound95)}`,
              amount: { is: leaks.leaking, as: 'whole' },
            },
    },
    {
      label: 'hides',
      definition:
        'Hidden: nothing leaked and the tolerance radius lies within the zone. Else only what was seen is hidden, or it leaks.',
      cell: ({ zones }) =>
        zones.hides === null ? null : { value: shortVerdict(zones.hides), beside: '', amount: null },
    },
    {
      label: 'unevenness',
      definition:
        'Largest onset less the smallest: how differently the zone answers by direction, as a share of full tilt.',
      cell: ({ zones }) => number(zones.unevenness, 'share'),
    },
  ];
}

/** `hidden in 24 of 24 seen` is too long for a column; the label and the zone's sentence say the rest. */
function shortVerdict(hides: string): string {
  return hides.replace(/^hidden in /, '');
}

type Kind = 'reach' | 'share' | 'whole';

function number(value: number | null | undefined, as: Kind): LedgerCell | null {
  return value === null || value === undefined
    ? null
    : { value: write(value, as), beside: '', amount: { is: value, as } };
}

function write(value: number, as: Kind): string {
  return as === 'reach' ? value.toFixed(3) : as === 'share' ? percent(value) : String(value);
}

function at(
  rim: Standing['rim'],
  extreme: { readonly value: number; readonly angle: number } | null | undefined,
  domain: Domain,
  as: Kind,
): LedgerCell | null {
  if (extreme === null || extreme === undefined) return null;
  const sign = isAtLeast({ rim }, extreme.angle, domain) ? '≥ ' : '';
  return {
    value: `${sign}${write(extreme.value, as)}`,
    beside: `at ${extreme.angle}°`,
    amount: { is: extreme.value, as },
  };
}

/** What the difference is of, e.g. `yours − proposed`. */
export function differenceHead(standings: readonly Standing[]): string {
  const [before, last] = [standings.at(-2), standings.at(-1)];
  return before === undefined || last === undefined ? '' : `${last.tone} − ${before.tone}`;
}

/** One number of the last standing's mapping less that of the one before it. */
export function numberDifference(standings: readonly Standing[], of: MappingNumber): string {
  const [before, last] = [standings.at(-2), standings.at(-1)];
  if (before === undefined || last === undefined) return '';
  const difference = numberOf(last.mapping, of) - numberOf(before.mapping, of);
  return difference === 0 ? '0' : `${difference > 0 ? '+' : ''}${count(difference)}`;
}

/** The ledger and the mappings as tab-separated text, for a note or a spreadsheet. */
export function ledgerText(head: string, standings: readonly Standing[], domain: Domain): string {
  const compared = standings.length > 1;
  const counts = (['x', 'y'] as const).flatMap((axis) =>
    (['min', 'centre', 'max'] as const).map((edge) => [
      `${axis} ${edge}`,
      ...standings.map(({ mapping }) => String(mapping[axis][edge])),
      ...(compared ? [numberDifference(standings, `${axis}.${edge}`)] : []),
    ]),
  );
  const rows = ledgerRows(standings, domain).map((row) => [
    row.label,
    ...row.cells.map(({ value, beside }) => (beside === '' ? value : `${value} ${beside}`)),
    ...(compared ? [row.difference] : []),
  ]);
  const lines = [
    [head, ...standings.map(({ tone }) => tone), ...(compared ? [differenceHead(standings)] : [])],
    ...rows,
    ...counts,
  ];
  // A spreadsheet reads a plain space before the sign, not the narrow one of the screen.
  return `${lines.map((line) => line.join('\t')).join('\n')}\n`.replaceAll(NARROW, ' ');
}
