/** Two surveys side by side, measure by measure: what changed is called a difference only beyond the repeatability of the measure. */
import type { SurveyDifference } from '../../core/measure/compare-surveys.ts';
import { STUDIED_WORDS } from '../../core/measure/studied-words.ts';
import { NARROW, percent, signed } from '../../core/plot/number-text.ts';
import type { Table } from '../kit/figures/table.ts';

export interface ComparedRow {
  readonly label: string;
  readonly before: string;
  readonly now: string;
  /** With its sign; empty where either is not known. */
  readonly change: string;
  /** More than this is a difference. */
  readonly limit: string;
  readonly verdict: 'differs' | 'the same' | 'cannot say';
}

const NONE = '—';

export function comparedRows(differences: readonly SurveyDifference[]): ComparedRow[] {
  return differences.map(({ measure, first, second, limit, differs }) => {
    const { says, unit } = STUDIED_WORDS[measure];
    const write = (value: number | null): string => (value === null ? NONE : written(value, unit));
    const change = first === null || second === null ? null : second - first;
    return {
      label: unit === 'counts' || unit === 'degrees' ? `${says}, ${unit}` : says,
      before: write(first),
      now: write(second),
      change: change === null ? '' : `${change > 0 ? '+' : ''}${written(change, unit)}`,
      limit: written(limit, unit),
      verdict: differs === null ? 'cannot say' : differs ? 'differs' : 'the same',
    };
  });
}

export function comparedTable(rows: readonly ComparedRow[]): Table {
  return {
    caption: 'Two surveys, measure by measure',
    heads: [
      { says: 'measure', spoken: true },
      { says: 'before', tone: 'before' },
      'now',
      'change',
      {
        says: 'limit',
        definition:
          'Two surveys of an unchanged stick differ by more in 5 % of the cases (ISO 5725-6, from memory), and never less than their own uncertainties together. Only what is beyond it is called a difference.',
      },
      { says: 'verdict', spoken: true },
    ],
    rows: rows.map(({ label, before, now, change, limit, verdict }) => [label, before, now, change, limit, verdict]),
    selected: null,
  };
}

/** One decimal more than the ledger: a limit may be a tenth of what the ledger writes. */
function written(value: number, unit: 'counts' | 'share' | 'reach' | 'degrees'): string {
  if (unit === 'share') return percent(value, 2);
  if (unit === 'reach') return signed(value, 4);
  return unit === 'degrees' ? `${signed(value, 2)}${NARROW}°` : signed(value, 1);
}

/** E.g. `3 of 12 measures differ by more than two surveys of an unchanged stick would.` */
export function comparedSentence(rows: readonly ComparedRow[]): string {
  const judged = rows.filter(({ verdict }) => verdict !== 'cannot say').length;
  const differ = rows.filter(({ verdict }) => verdict === 'differs').length;
  if (judged === 0) return 'Nothing can be compared: one of the two has no rest and no rim.';
  if (differ === 0) return `None of ${judged} measures differs by more than surveying alone explains.`;
  return `${differ} of ${judged} measures ${differ === 1 ? 'differs' : 'differ'} by more than surveying alone explains.`;
}
