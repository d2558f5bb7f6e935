/** The limits in force as a table: each with its unit and where it comes from. */
import { defaultLimits, limitIds, type Limits } from '../../core/findings/limits.ts';
import type { Table } from '../kit/figures/table.ts';
import { writtenIn } from '../kit/words/quantity-words.ts';
import { LIMIT_FROM_MEANS } from './finding-words.ts';
import { limitName, limitText } from './limit-words.ts';

export function limitsTable(inForce: Limits): Table {
  return {
    caption: 'Limits that findings are held against',
    heads: [
      'limit',
      { says: 'value', width: '4.3em' },
      { says: 'sign', spoken: true, words: true, near: true, tone: 'soft', width: '2.5em' },
      { says: 'from', words: true, tone: 'soft', width: '8.9em' },
    ],
    rows: limitIds.map((id) => {
      const { unit, source, from } = defaultLimits[id];
      const { sign, of } = writtenIn(unit);
      const counted = of === '' ? '' : `In ${`${sign.trim()} ${of}`.trim()}. `;
      return [
        { says: limitName(id), definition: `${counted}${source} ${from}: ${LIMIT_FROM_MEANS[from]}.` },
        limitText(id, inForce[id].value),
        sign.trim(),
        inForce[id].setBy === 'default' ? from : 'yours',
      ];
    }),
    selected: null,
  };
}
