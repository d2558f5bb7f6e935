/** Proposals as a person reads them: the numbers with their reasons, then what they will do beside what is now. */
import { formatPercent, formatQuantity } from '../../../core/measure/format-quantity.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import type { Prediction, Proposal } from '../../../core/proposal/proposal.ts';
import { drawTable } from './tables.ts';

export type Proposals = Readonly<Partial<Record<StickId, Proposal>>>;

export function proposalText(proposals: Proposals): string {
  return STICKS.flatMap((stick) => {
    const proposal = proposals[stick];
    return proposal === undefined ? [] : [stickText(`${stick} stick`, proposal)];
  }).join('\n\n');
}

function stickText(title: string, { mapping, aim, centreBy, guard, predicted, current, reasons }: Proposal): string {
  const axes = (['x', 'y'] as const).map((axis) => [axis, mapping[axis].min, mapping[axis].centre, mapping[axis].max]);
  const right = { align: 'right' } as const;
  return [
    `${title}: aim ${aim}, centre ${centreBy}, guard ${formatPercent(guard)} %`,
    drawTable(
      [{ head: 'counts' }, { head: 'min', ...right }, { head: 'centre', ...right }, { head: 'max', ...right }],
      axes,
    ),
    drawTable(
      [{ head: 'predicted' }, { head: 'now', ...right }, { head: 'proposed', ...right }],
      compare(current, predicted),
    ),
    ...reasons.map(
      ({ of, says, u95 }) => `${of}: ${says}${u95 === null ? '' : ` (± ${formatQuantity(u95, null, 1)} counts)`}`,
    ),
  ].join('\n\n');
}

function compare(now: Prediction, then: Prediction): (string | number)[][] {
  const both = (label: string, of: (one: Prediction) => number | null | undefined): (string | number)[] => [
    label,
    formatPercent(of(now) ?? null),
    formatPercent(of(then) ?? null),
  ];
  return [
    both('least reach, %', ({ rim }) => rim?.leastReach?.value),
    both('overreach, %', ({ rim }) => rim?.overreach?.value),
    both('mean radial error, %', ({ rim }) => rim?.meanRadialError),
    both('directions at full output, %', ({ rim }) => rim?.fullReachShare),
    both('rest offset, %', ({ rest }) => rest?.offset.magnitude),
    both('largest at rest, %', ({ rest }) => rest?.offset.largest),
    both('tolerance radius, %', ({ rest }) => rest?.toleranceRadius),
  ];
}
