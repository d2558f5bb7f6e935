/** What the signal path of the selected direction is drawn from, and its table twin. */
import type { StageCurves } from '../../core/plot/stage-curves.ts';
import { percent } from '../../core/plot/number-text.ts';
import type { Stage } from '../../core/zones/chain.ts';
import { numberCell, type Table } from '../kit/figures/table.ts';
import { kindOf } from '../stick/stage-kinds.ts';

/** Short names of the curves: the pad, then each stage by its place. */
export function curveNames(stages: readonly Stage[]): string[] {
  return ['pad', ...stages.map((stage, index) => `${index + 1}${stage.off === true ? ' off' : ''}`)];
}

/** Pushes that the table tells, as shares of the way to the gate. */
const PUSHES = [0, 0.25, 0.5, 0.75, 1];

/** Each stage's output at some pushes, and what it takes (−) or gives (+) at the gate. */
export function pathTable({ push, after }: StageCurves, stages: readonly Stage[], selected: number | null): Table {
  const at = (curve: Float64Array | undefined, share: number): number =>
    curve?.[Math.round(share * (push.length - 1))] ?? Number.NaN;
  return {
    caption: 'Output after each stage against push in the selected direction',
    heads: [
      'after',
      ...PUSHES.map((share) => (share === 0 ? 'rest' : share === 1 ? 'gate' : `${100 * share} %`)),
      'its share at the gate',
    ],
    rows: after.map((curve, index) => [
      index === 0 ? 'pad' : `${index} ${kindOf(stages[index - 1] as Stage).says}`,
      ...PUSHES.map((share) => numberCell(at(curve, share), (value) => value.toFixed(3))),
      index === 0 ? '' : numberCell(at(curve, 1) - at(after[index - 1], 1), (value) => percent(value)),
    ]),
    selected: selected === null ? null : selected + 1,
  };
}
