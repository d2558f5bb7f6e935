/** The stored numbers of a stick by name, layer by layer, beside what a survey measured and what is planned. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { count } from '../../core/plot/number-text.ts';
import type { Table, WordsCell } from '../kit/figures/table.ts';

export interface ValueColumn {
  /** E.g. `measured`, `factory`, `user`, `proposed`, `yours`. */
  readonly head: string;
  /** Null where the layer holds nothing plausible, or nothing was measured. */
  readonly mapping: StickMapping | null;
}

const NUMBERS = (['x', 'y'] as const).flatMap((axis) =>
  (['min', 'centre', 'max'] as const).map((edge) => ({ axis, edge })),
);

/** The first column is the measured one; beside the others stands how far they are from it, e.g. `+12`. */
export function valuesTable(columns: readonly ValueColumn[]): Table {
  return {
    caption: 'Stored numbers in raw counts, with their difference from the measured ones',
    heads: [
      { says: 'number', spoken: true },
      ...columns.map(({ head }) => ({ says: head, ...(head === 'proposed' ? { tone: 'proposed' as const } : {}) })),
    ],
    rows: NUMBERS.map(({ axis, edge }) => {
      const measured = columns[0]?.mapping?.[axis][edge] ?? null;
      const cells = columns.map(({ mapping }, index): WordsCell => {
        const value = mapping?.[axis][edge];
        if (value === undefined) return { says: '—', beside: '' };
        return { says: count(value), beside: index === 0 || measured === null ? '' : difference(value - measured) };
      });
      return [`${axis} ${edge}`, ...cells];
    }),
    selected: null,
  };
}

function difference(counts: number): string {
  if (counts === 0) return '±0';
  return counts > 0 ? `+${count(counts)}` : `−${count(-counts)}`;
}
