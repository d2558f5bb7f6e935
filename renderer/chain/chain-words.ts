/** Chains in the words of the screen. */
import type { Chain, Stage } from '../../core/zones/chain.ts';
import { kindOf } from '../stick/stage-kinds.ts';
import { fieldText } from '../stick/stage-text.ts';

/** E.g. `scaled radial zone, inner 10 %, outer 100 %`. */
export function stageWords(stage: Stage): string {
  const { says, fields } = kindOf(stage);
  const parts = fields.map((field) => {
    if (field.kind === 'sectors') return `${fieldText(stage, field).split('\n').length} of them`;
    if (field.kind === 'points') return `${fieldText(stage, field).split('\n').length} points`;
    const text = fieldText(stage, field);
    const word = field.choices?.find(({ value }) => value === text)?.says ?? text;
    if (field.kind === 'percent') return `${field.says} ${word} %`;
    return field.kind === 'number' ? `${field.says} ${word}` : word;
  });
  return [says, ...parts].join(', ');
}

/** The stages in force in one line, in their order. */
export function chainLine({ stages }: Pick<Chain, 'stages'>): string {
  const active = stages.filter((stage) => stage.off !== true).map((stage) => kindOf(stage).says);
  const off = stages.length - active.length;
  const line = active.length === 0 ? 'no stage: the pad as it is' : active.join(' → ');
  return off === 0 ? line : `${line} (${off} switched off)`;
}
