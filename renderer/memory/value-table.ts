/** The stored numbers of a stick by name, layer by layer, beside what a survey measured and what is planned. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { count } from '../../core/plot/number-text.ts';

export interface ValueColumn {
  /** E.g. `measured`, `factory`, `user`, `proposed`, `yours`. */
  readonly head: string;
  /** Null where the layer holds nothing plausible, or nothing was measured. */
  readonly mapping: StickMapping | null;
}

export interface ValueCell {
  readonly text: string;
  /** Counts from the measured number, e.g. `+12`; empty for the measured one itself and where nothing was measured. */
  readonly off: string;
}

export interface ValueRow {
  /** E.g. `x max`. */
  readonly name: string;
  readonly cells: readonly ValueCell[];
}

const NUMBERS = (['x', 'y'] as const).flatMap((axis) =>
  (['min', 'centre', 'max'] as const).map((edge) => ({ axis, edge })),
);

/** The first column is the measured one, which the others are compared with. */
export function valueRows(columns: readonly ValueColumn[]): ValueRow[] {
  return NUMBERS.map(({ axis, edge }) => {
    const measured = columns[0]?.mapping?.[axis][edge] ?? null;
    return {
      name: `${axis} ${edge}`,
      cells: columns.map(({ mapping }, index) => {
        const value = mapping?.[axis][edge];
        if (value === undefined) return { text: '—', off: '' };
        return { text: count(value), off: index === 0 || measured === null ? '' : difference(value - measured) };
      }),
    };
  });
}

function difference(counts: number): string {
  if (counts === 0) return '±0';
  return counts > 0 ? `+${count(counts)}` : `−${count(-counts)}`;
}
