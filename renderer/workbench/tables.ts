/** The table twin of each figure. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { directionIndex } from '../../core/geometry/directions.ts';
import { deflect } from '../../core/mapping/deflect.ts';
import { count, percent, signed } from '../../core/plot/number-text.ts';
import { numberCell, type NumberCell, type Table } from '../kit/figures/table.ts';
import { directionText } from '../frame/direction-words.ts';
import { edgeName } from './edge-name.ts';
import { rimPoint } from '../stick/shown-direction.svelte.ts';
import type { Standing } from '../stick/standing.ts';
import type { ResponseSeries } from './response-series.ts';
import type { ProposalReply } from '../stick/proposals.svelte.ts';

const STATES = { covered: 'covered', thin: 'few turns', none: 'not covered' } as const;

/** `atLeast` names the directions whose reach stands at a limit of the field; `marked` are those of the marked finding. */
export function profileTable(
  standings: readonly Standing[],
  atLeast: readonly boolean[],
  selected: number | null,
  marked: readonly number[] = [],
): Table {
  const directions = standings[0]?.rim?.directions ?? [];
  return {
    caption: 'Reach at the gate and onset from the measured rest, by direction',
    heads: [
      'direction',
      'coverage',
      ...standings.flatMap(({ tone }) => [`reach ${tone}`, `spread ${tone}`]),
      ...standings.map(({ tone }) => `onset ${tone}`),
    ],
    rows: directions.map((direction, index) => [
      numberCell(direction.angle, directionText),
      `${STATES[direction.state]}${marked.includes(direction.angle) ? ', finding' : ''}`,
      ...standings.flatMap(({ rim }) => [
        boundCell(fixed(rim?.directions[index]?.reach, 3), atLeast[index] === true),
        fixed(rim?.directions[index]?.spread, 4),
      ]),
      ...standings.map(({ zones }) => share(zones.onset?.[index]?.deflection)),
    ]),
    selected: selected === null || directions.length === 0 ? null : directionIndex(selected),
  };
}

/** Rest points, each with its deflection under every mapping; the release that a selected sample lies in is marked. */
export function restTable(
  evidence: StickEvidence,
  standings: readonly Standing[],
  sample: number | null = null,
): Table {
  const dwells = evidence.rest?.dwells ?? [];
  const holds = dwells.findIndex(({ startUs, endUs }) => sample !== null && sample >= startUs && sample <= endUs);
  return {
    caption: 'Rest points, counts; offset under each mapping',
    heads: ['release', 'x', 'y', ...standings.map(({ tone }) => tone)],
    rows: dwells.map(({ point }, index) => [
      String(index + 1),
      ...[point.x, point.y].map((counts) => numberCell(counts, (value) => signed(value, 1))),
      ...standings.map(({ mapping }) => {
        const d = deflect(mapping, evidence.fields, point);
        return share(Math.hypot(d.x, d.y));
      }),
    ]),
    selected: holds < 0 ? null : holds,
  };
}

/** Rim points in raw counts as reported. */
export function rimTable(evidence: StickEvidence, standings: readonly Standing[], selected: number | null): Table {
  const directions = standings[0]?.rim?.directions ?? [];
  return {
    caption: 'Rim points, counts; angle put out under each mapping',
    heads: ['direction', 'x', 'y', ...standings.map(({ tone }) => tone)],
    rows: directions.map(({ angle }, index) => {
      const at = rimPoint(evidence, standings, angle);
      return [
        numberCell(angle, directionText),
        numberCell(at?.x, count),
        numberCell(at?.y, count),
        ...standings.map(({ rim }) =>
          numberCell(rim?.directions[index]?.outputAngle, (angle) => `${signed(angle, 1)}°`),
        ),
      ];
    }),
    selected: selected === null || directions.length === 0 ? null : directionIndex(selected),
  };
}

/** The numbers of the mappings, the change of the last one, the proposal's uncertainty and the measured extents. */
export function railsTable(
  evidence: StickEvidence,
  standings: readonly Standing[],
  proposal: ProposalReply | null,
): Table {
  const extremes = evidence.rim?.turns.map((turn) => turn.extremes) ?? [];
  const met = (axis: 'x' | 'y', edge: 'min' | 'centre' | 'max'): NumberCell => {
    if (edge === 'centre') {
      return numberCell(standings[0]?.rest?.point[axis], (rest) => `${signed(rest, 1)} rest`);
    }
    const values = extremes.map((extreme) => extreme[`${axis}${edge === 'min' ? 'Min' : 'Max'}`]);
    // Of no turns the least and the greatest are infinite, which is no number to draw.
    return numberCell(edge === 'min' ? Math.min(...values) : Math.max(...values), count);
  };
  return {
    caption: 'Minimum, centre and maximum of each axis in raw counts',
    heads: ['number', 'measured', ...standings.map(({ tone }) => tone), 'change', 'u95'],
    rows: (['x', 'y'] as const).flatMap((axis) =>
      (['min', 'centre', 'max'] as const).map((edge) => {
        const values = standings.map(({ mapping }) => mapping[axis][edge]);
        const [was, is] = [values.at(-2), values.at(-1)];
        const u95 = proposal?.reasons.find((reason) => reason.of === `${axis}.${edge}`)?.u95 ?? null;
        const change = was === undefined || is === undefined ? null : is - was;
        return [
          edgeName(`${axis}.${edge}`),
          met(axis, edge),
          ...values.map((value) => numberCell(value, count)),
          numberCell(change, (value) => `${value > 0 ? '+' : ''}${count(value)}`),
          numberCell(u95, (value) => `±${signed(value, 1)}`),
        ];
      }),
    ),
    selected: null,
  };
}

export function responseTable(response: readonly ResponseSeries[]): Table {
  const pushes = Array.from({ length: 21 }, (_, step) => step / 20);
  return {
    caption: 'Output against push along the selected direction; push is the share of the way from rest to gate',
    heads: ['push', ...response.map(({ tone }) => `output ${tone}`)],
    rows: pushes.map((push) => [
      numberCell(push, (value) => percent(value, 0)),
      ...response.map(({ points }) => fixed(outputAt(points, push), 3)),
    ]),
    selected: null,
  };
}

function outputAt(points: Float64Array, push: number): number | null {
  for (let at = points.length - 2; at >= 0; at -= 2)
    if (Math.abs((points[at] ?? 0) - push) < 1e-9) return points[at + 1] ?? null;
  return null;
}

function fixed(value: number | null | undefined, decimals: number): NumberCell {
  return numberCell(value, (known) => known.toFixed(decimals));
}

function share(value: number | null | undefined): NumberCell {
  return numberCell(value, (known) => percent(known));
}

function boundCell(cell: NumberCell, atLeast: boolean): NumberCell {
  return atLeast ? { ...cell, atLeast } : cell;
}
