/** The ledger: each measure in words, defined, and under each mapping with its uncertainty. */
import type { Domain } from '../../../core/pad/stick.ts';
import { NARROW, percent, signed } from '../../../core/plot/number-text.ts';
import { isAtLeast } from './at-least.ts';
import { offsetUncertainty } from './offset-uncertainty.ts';
import type { Standing } from './standing.ts';

export interface LedgerCell {
  /** The number, or `—` where it cannot be stated. */
  readonly value: string;
  /** Beside it in small letters: uncertainty, bound or direction. */
  readonly beside: string;
}

export interface LedgerRow {
  readonly label: string;
  readonly definition: string;
  readonly cells: readonly LedgerCell[];
}

const UNKNOWN: LedgerCell = { value: '—', beside: '' };

interface Line {
  readonly label: string;
  readonly definition: string;
  readonly cell: (standing: Standing) => LedgerCell | null;
}

/** `domain` tells whether a reach at a field's limit is only "at least" known. */
export function ledgerRows(standings: readonly Standing[], domain: Domain): LedgerRow[] {
  const covered = standings[0]?.rim?.directions.filter((direction) => direction.covered).length ?? null;
  const releases = standings[0]?.rest?.releases ?? null;
  return linesFor(covered, releases, domain).map(({ label, definition, cell }) => ({
    label,
    definition,
    cells: standings.map((standing) => cell(standing) ?? UNKNOWN),
  }));
}

function linesFor(covered: number | null, releases: number | null, domain: Domain): readonly Line[] {
  return [
    {
      label: 'least reach',
      definition:
        'Smallest magnitude of the free deflection at the gate over the covered directions, and where. Below 1 the pad never gives full output there. ≥: the count stands at the limit of its field, so it may be more.',
      cell: ({ rim }) => at(rim, rim?.leastReach, domain, (value) => value.toFixed(3)),
    },
    {
      label: 'mean radial error',
      definition: 'Mean of |seen − 1| over the covered directions, where seen is the limited reach that a host gets.',
      cell: ({ rim }) => number(rim?.meanRadialError, percent),
    },
    {
      label: covered === null ? 'full reach' : `full reach, of ${covered}`,
      definition: 'Covered directions in which the reach at the gate is 1 or more.',
      cell: ({ rim }) => number(rim?.fullReachShare, (share) => String(Math.round(share * (covered ?? 0)))),
    },
    {
      label: 'overreach',
      definition:
        'Largest reach − 1 and where: how much movement before the gate already gives full output. Negative where full output is never met. ≥: the count stands at the limit of its field, so it may be more.',
      cell: ({ rim }) => at(rim, rim?.overreach, domain, percent),
    },
    {
      label: 'rest offset',
      definition:
        'Magnitude of the deflection of the mean rest point under this mapping, with its expanded uncertainty at 95 % (JCGM 100).',
      cell: ({ rest, mapping }) => {
        if (rest === null) return null;
        const u95 = offsetUncertainty(rest, mapping);
        return { value: percent(rest.offset.magnitude), beside: u95 === null ? '' : `±${signed(u95 * 100, 1)}` };
      },
    },
    {
      label: 'rest scatter',
      definition: 'Radius of the smallest circle around all rest points, in raw counts: the same under every mapping.',
      cell: ({ rest }) => (rest === null ? null : { value: signed(rest.enclosing.radius, 1), beside: 'counts' }),
    },
    {
      label: 'tolerance radius',
      definition:
        'Largest deflection over the region that holds 99 % of releases with 95 % confidence, plus what readings stray within a dwell. Rests on normality; null below 12 releases.',
      cell: ({ rest }) => number(rest?.toleranceRadius, percent),
    },
    {
      label: 'smallest zone, seen',
      definition:
        'The smallest plain radial zone on the deflection of the pad, in place of this zone, that hides every settled reading seen.',
      cell: ({ zones }) => number(zones.smallestZone?.observed, percent),
    },
    {
      label: 'its cost in onset',
      definition:
        'Least and largest push that the smallest zone seen swallows over all directions: what hiding the rest costs at best.',
      cell: ({ zones }) => {
        const costs = zones.smallestZone?.costs.observed;
        if (costs === undefined) return null;
        return { value: `${signed(costs.least * 100, 1)}–${percent(costs.largest)}`, beside: '' };
      },
    },
    {
      label: releases === null ? 'leaks' : `leaks, of ${releases}`,
      definition:
        'Releases whose settled rest comes out of the zone as anything but zero, and below which share of all releases leak, one-sided at 95 % (0.95 quantile of Beta(k + 1, n − k)).',
      cell: ({ zones: { leaks } }) =>
        leaks === null ? null : { value: String(leaks.leaking), beside: `≤ ${percent(leaks.upperBound95)}` },
    },
    {
      label: 'hides',
      definition:
        'Hidden: nothing leaked and the tolerance radius lies within the zone. Else only what was seen is hidden, or it leaks.',
      cell: ({ zones }) => (zones.hides === null ? null : { value: shortVerdict(zones.hides), beside: '' }),
    },
    {
      label: 'unevenness',
      definition:
        'Largest onset less the smallest: how differently the zone answers by direction, as a share of full tilt.',
      cell: ({ zones }) => number(zones.unevenness, percent),
    },
  ];
}

/** `hidden in 24 of 24 seen` is too long for a column; the label and the zone's sentence say the rest. */
function shortVerdict(hides: string): string {
  return hides.replace(/^hidden in /, '');
}

function number(value: number | null | undefined, write: (value: number) => string): LedgerCell | null {
  return value === null || value === undefined ? null : { value: write(value), beside: '' };
}

function at(
  rim: Standing['rim'],
  extreme: { readonly value: number; readonly angle: number } | null | undefined,
  domain: Domain,
  write: (value: number) => string,
): LedgerCell | null {
  if (extreme === null || extreme === undefined) return null;
  const sign = isAtLeast({ rim }, extreme.angle, domain) ? '≥ ' : '';
  return { value: `${sign}${write(extreme.value)}`, beside: `at ${extreme.angle}°` };
}

/** The ledger and the mappings as tab-separated text, for a note or a spreadsheet. */
export function ledgerText(head: string, standings: readonly Standing[], domain: Domain): string {
  const counts = (['x', 'y'] as const).flatMap((axis) =>
    (['min', 'centre', 'max'] as const).map((edge) => [
      `${axis} ${edge}`,
      ...standings.map(({ mapping }) => String(mapping[axis][edge])),
    ]),
  );
  const rows = ledgerRows(standings, domain).map((row) => [
    row.label,
    ...row.cells.map(({ value, beside }) => (beside === '' ? value : `${value} ${beside}`)),
  ]);
  const lines = [[head, ...standings.map(({ tone }) => tone)], ...rows, ...counts];
  // A spreadsheet reads a plain space before the sign, not the narrow one of the screen.
  return `${lines.map((line) => line.join('\t')).join('\n')}\n`.replaceAll(NARROW, ' ');
}
